// The page is first drawn in its own lettering: one that came later would widen every button under the pointer.

/** Resolves once the lettering of text and of headings is here, or can't be had: then the system's stands for it. */
export async function letteringReady(): Promise<void> {
  const { fontFamily } = getComputedStyle(document.body);
  const warm = getComputedStyle(document.documentElement).getPropertyValue('--font-warm');
  await Promise.allSettled([fontFamily, warm].map((family) => document.fonts.load(`1em ${family}`, 'Jar 0')));
}
