// The page that lies beside the tables for whoever opens them without the program.
export const TABLES_README = `These are the tables of a Jarline ledger, as plain text that any spreadsheet program opens
(CSV by RFC 4180, in UTF-8).

jars.csv            one row for each jar, in words. "Bring in a spreadsheet" reads it back as the same family: jars, what
                    seeded them and how much, what went in, how they came out, and so what is to be careful of.
facts/KIND.csv      everything as it is kept, a file for each kind of fact: jar, batch, seeding, observation, remark, movement ...
                    Rows point at each other by id: a seeding says which jar (jar) was seeded from which (fromJar) or from
                    which source. An amount has three columns: its value, its unit and what was typed.
readings.csv        temperatures that probes read; "series" of facts/series.csv names them by their block

What is unknown is an empty cell. Days are YYYY-MM-DD, moments ISO 8601 with their offset, temperatures degrees Celsius.
A cell that could be taken for a formula begins with an apostrophe that is not part of it.

What one row of jars.csv can't hold stays in the other files: looks on later days, lifted cautions, packages and prices, parts
kept apart, tastings.
A jar seeded from one of no known day has that in it as a culture of unknown past.
To take the whole ledger elsewhere and back without loss, write an archive instead.

Private remarks, prices and names are in these files.
Nothing here says that a jar may be eaten. When in doubt, throw it out; ask your local food-safety authority.
`;
