/** Makes a function that waits until the messages that are there were taken. Timers would wait for milliseconds. */
export function makePause(): () => Promise<void> {
  const { port1, port2 } = new MessageChannel();
  const waiting: (() => void)[] = [];
  port1.onmessage = () => { waiting.shift()?.(); };
  return () => new Promise((resolve) => {
    waiting.push(resolve);
    port2.postMessage(undefined);
  });
}
