import { flushSync } from 'react-dom';
import { files } from './state.ts';

/** The page's own print view is there only while printing; browsers wait for nothing but the event's end. */
const begin = () => { flushSync(() => { files.setState({ printing: true }); }); };
const end = () => { files.setState({ printing: false }); };

export function followPrinting(): () => void {
  addEventListener('beforeprint', begin);
  addEventListener('afterprint', end);
  return () => {
    removeEventListener('beforeprint', begin);
    removeEventListener('afterprint', end);
  };
}

export function print(): void {
  globalThis.print();
}
