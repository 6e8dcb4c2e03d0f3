/**
 * Motion along one stretch at constant acceleration. Lengths mm, speeds mm/s, accelerations mm/s2, times s.
 * Biagiotti and Melchiorri, Trajectory Planning for Automatic Machines and Robots, ch. 3; kinematics.
 */
export interface Stretch {
  readonly length: number;
  /** Speed never exceeded, and the speeds at its ends; these must be reachable within the length. */
  readonly speed: number;
  readonly entry: number;
  readonly exit: number;
}

/** Shortest time over a stretch: a trapezoid of speed, or a triangle where the full speed is never reached. */
export function stretchTime({ length, speed, entry, exit }: Stretch, acceleration: number): number {
  if (length <= 0) return 0;
  const peak = Math.sqrt(acceleration * length + (entry * entry + exit * exit) / 2);
  if (peak <= speed) return (2 * peak - entry - exit) / acceleration;
  const changing = (2 * speed * speed - entry * entry - exit * exit) / (2 * acceleration);
  return (2 * speed - entry - exit) / acceleration + (length - changing) / speed;
}

/** Greatest speed at one end of a stretch when the other end has `speed`. */
export const reachableSpeed = (speed: number, length: number, acceleration: number): number =>
  Math.sqrt(speed * speed + 2 * acceleration * length);

/** Speed on a circle at which the acceleration toward its centre is all there is. */
export const arcSpeed = (radius: number, acceleration: number): number => Math.sqrt(acceleration * radius);

/**
 * Speed kept at a corner: that on the arc which rounds the corner off within `deviation` mm, by the cosine of the angle
 * between the directions before and after. Infinity straight through, 0 on a reversal or without deviation.
 */
export function cornerSpeed(cosine: number, deviation: number, acceleration: number): number {
  // sin of half the interior angle; the angle between the directions is what is missing to 180 degrees.
  const half = Math.sqrt(Math.max(0, Math.min(1, (1 + cosine) / 2)));
  return half >= 1 - STRAIGHT ? Infinity : arcSpeed((deviation * half) / (1 - half), acceleration);
}

/** Rounding noise of a straight joint, about 0.0001 degrees of turning. */
const STRAIGHT = 1e-12;
