/** Separated extra-low voltage: at most 120 V of ripple-free direct current (IEC 61558-1, IEC 61140, IEC 60364-4-41 clause 414). */
export const SELV_VOLTS = 120;

/** Bare parts that can be touched: 60 V of direct current where it is dry, 30 V where it is wet (IEC 60364-4-41 414.4.5, from memory). */
export const touchVolts = (wet: boolean): number => (wet ? 30 : 60);

/** What a Class 2 supply of direct current may give: A and VA by its voltage; nothing beyond 60 V (NEC chapter 9 table 11(B), from memory). */
export function classTwo(volts: number): { readonly amps: number; readonly voltAmps: number } {
  if (volts > 60) return { amps: 0, voltAmps: 0 };
  return volts <= 20 ? { amps: 5, voltAmps: 5 * volts } : { amps: 100 / volts, voltAmps: 100 };
}
