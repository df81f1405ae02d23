// Where the methods of judgement come from, as shown beside its figures.
export const PRIOR_SOURCES = {
  trend:
    'Theil 1950 and Sen 1968 (slope), Mann 1945 and Kendall (trend test), NIST/SEMATECH e-Handbook 6.3.2.4 (smoothed level), Kass and Raftery 1995 (how much likelier); alarm levels set by simulated lines.',
  score: "The program's own scale, no source; warm hours by Rosso, Lobry & Flandrois 1993.",
} as const;
