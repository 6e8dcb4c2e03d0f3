/** The parameters of one node, made from its declaration. */
export function NodeForm({ node }: { readonly node: string }) {
  return <form aria-label={`Values of ${node}`} />;
}
