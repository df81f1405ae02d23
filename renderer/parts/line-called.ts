/** "line Heron"; a name that says so itself is left as it is: "Kitchen line". */
export const lineCalled = (name: string): string => (/\bline\b/i.test(name) ? name : `line ${name}`);
