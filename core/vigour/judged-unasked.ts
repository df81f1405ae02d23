/**
 * So many jars are judged without being asked for. Of more it takes many seconds: there only what the keeper asks about is
 * judged, and today's list says nothing of what follows from it.
 */
export const JUDGED_UNASKED = 20_000;
