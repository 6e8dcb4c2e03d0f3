/** Hundredths of a currency as an amount: thousands apart by a thin gap, two decimals, the currency behind where there is one. */
export function money(hundredths: number, currency: string): string {
  const [whole, part] = (Math.abs(hundredths) / 100).toFixed(2).split('.') as [string, string];
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, '\u00a0');
  return `${hundredths < 0 ? '-' : ''}${grouped}.${part}${currency === '' ? '' : ` ${currency}`}`;
}
