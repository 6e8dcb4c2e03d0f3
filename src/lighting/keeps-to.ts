/** A value that is above its limit by less than this share of it keeps to it. */
const HAIR = 1e-9;

/** Whether a load, current or rating asked for is within a limit, but for rounding. */
export const keepsTo = (value: number, limit: number): boolean => value <= limit * (1 + HAIR);
