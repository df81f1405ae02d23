/** The displays that windows are tried on, one for each worker; undefined stands for the display there is. */
export const displays: readonly (string | undefined)[] = process.env['JARLINE_DISPLAYS']?.split(' ') ?? [
  undefined,
];

/** The display of this worker. */
export const ownDisplay = (): string | undefined => displays[Number(process.env['TEST_PARALLEL_INDEX'] ?? 0)];
