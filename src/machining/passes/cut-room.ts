/** Room beside the board for lead-ins and the finishing allowance besides the cutter itself, mm (common practice, no source). */
const LEADS = 11;

/** How far beside the board outline cuts may reach into the waste, mm, with cutters of these diameters. */
export const cutRoom = (diameters: readonly number[]): number => Math.max(0, ...diameters) + LEADS;
