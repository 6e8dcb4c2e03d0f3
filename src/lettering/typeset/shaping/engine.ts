import wasm from 'harfbuzzjs/dist/harfbuzz.wasm?url&inline';
import { bytesOfBase64 } from '../../../artwork/index.ts';

/** What of the shaping engine's exports is used here: functions of numbers, most of them addresses in its memory. */
type Call = (...numbers: number[]) => number;
export interface Engine {
  readonly memory: { readonly buffer: ArrayBuffer; readonly grow: (pages: number) => number };
  readonly __indirect_function_table: { readonly length: number; readonly grow: (count: number) => number; readonly set: (place: number, call: unknown) => void };
  readonly call: Readonly<Record<string, Call>>;
}

/** The part of the host's WebAssembly that is needed: the core knows no host's types. */
interface Host {
  readonly WebAssembly: {
    readonly Module: new (bytes: Uint8Array) => object;
    readonly Instance: new (module: object, imports: object) => { readonly exports: Readonly<Record<string, unknown>> };
  };
}
const { WebAssembly: host } = globalThis as unknown as Host;

const PAGE = 65536;
/** More than any typeface of an alphabet needs; a damaged one is told to stop here. */
const MOST_MEMORY = 256 * 1024 * 1024;

let compiled: object | undefined;

/**
 * Starts the shaping engine anew, in memory of its own: what a damaged font does to it ends with it. Synchronous, since a node's
 * `compute` is; its code is compiled once.
 */
export function startEngine(): Engine {
  compiled ??= new host.Module(bytesOfBase64(wasm.slice(wasm.indexOf(',') + 1)));
  const stop = () => {
    throw new Error('the shaping engine stopped');
  };
  const env = { _emscripten_runtime_keepalive_clear: () => undefined, _abort_js: stop, _setitimer_js: () => 0, emscripten_resize_heap: (bytes: number) => grow(bytes >>> 0) };
  const { exports } = new host.Instance(compiled, { env, wasi_snapshot_preview1: { proc_exit: stop } });
  const engine = { ...exports, call: exports } as unknown as Engine;
  const grow = (bytes: number): number => {
    const have = engine.memory.buffer.byteLength;
    if (bytes > MOST_MEMORY) return 0;
    // Half as much again at once: memory that grows page by page is slow.
    const wanted = Math.min(MOST_MEMORY, Math.max(bytes, have * 1.5));
    engine.memory.grow(Math.ceil((wanted - have) / PAGE));
    return 1;
  };
  engine.call['__wasm_call_ctors']!();
  return engine;
}

const NUMBER = { i: 0x7f, f: 0x7d } as const;

/**
 * The place in the engine's table of a function of ours, so that the engine can call it: its numbers are integers (`i`) or
 * fractions (`f`). A table takes functions of WebAssembly only, so a module of a few bytes hands the call on.
 */
export function callback(engine: Engine, numbers: string, called: (...numbers: number[]) => void): number {
  const types = [...numbers].map((kind) => NUMBER[kind as keyof typeof NUMBER]);
  const bytes = Uint8Array.of(
    0, 0x61, 0x73, 0x6d, 1, 0, 0, 0,
    1, 4 + types.length, 1, 0x60, types.length, ...types, 0,
    2, 7, 1, 1, 0x65, 1, 0x66, 0, 0,
    7, 5, 1, 1, 0x66, 0, 0,
  );
  const { exports } = new host.Instance(new host.Module(bytes), { e: { f: called } });
  const place = engine.__indirect_function_table.grow(1);
  engine.__indirect_function_table.set(place, exports['f']);
  return place;
}
