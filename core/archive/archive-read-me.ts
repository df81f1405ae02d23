// The page that lies in an archive for whoever opens it without the program.
import { ARCHIVE_VERSION } from './archive-format';

export const ARCHIVE_README = `This is a whole Jarline ledger: every jar of a fermented-milk culture and what seeded it.
Archive version ${ARCHIVE_VERSION}.

It is a zip archive of plain text and photographs, and can be read without Jarline.
To read it back, start a new, empty ledger and read the archive into it: nothing is lost, and undo still works.

archive.json          what lies here: the length and the SHA-256 hash of every other file
schema.json           what each line below is, as JSON Schema (draft 2020-12)
ledgers.jsonl         this ledger, and those whose records came here with a jar
acts.jsonl            everything that was done, when and why
records.jsonl         each record's number, kind, who made it and, where it is gone, who ended it
readings.jsonl        temperatures that probes read
facts/KIND.jsonl      the facts themselves, a file for each kind: jar, batch, seeding, observation, remark ...
steps.jsonl           what was changed or taken away later, with the form before
drafts.jsonl          what was begun and not recorded yet
photographs/HASH.jpg  photographs, by their SHA-256 hash; facts/photograph.jsonl says of which jar

A file ending in .jsonl holds one JSON object a line, in UTF-8. A long one goes on in NAME-2.jsonl and so on.
Records point at each other by id. What is unknown is left out. Days are YYYY-MM-DD, moments ISO 8601 with
their offset. Amounts are in mL, g, pieces or CFU beside what was typed; temperatures are in degrees Celsius.
A seeding is one edge of the family: this much of that jar (fromJar), or of that source, into this jar (jar).

Private remarks, prices and names are in it. To give a jar away with its ancestry, write a hand-over instead.
Nothing here says that a jar may be eaten. When in doubt, throw it out; ask your local food-safety authority.
`;
