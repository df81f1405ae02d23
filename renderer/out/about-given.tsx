// What a hand-over tells of its jar, as a table of rows.
import { handOverRows } from '../../core/says/hand-over-says';
import type { AboutJar } from '../../core/shapes/hand-over-calls';

export const AboutGiven = ({ about }: { readonly about: AboutJar }) => (
  <dl className="out-rows">
    {handOverRows(about).map(([name, words]) => (
      <div key={name}>
        <dt>{name}</dt>
        <dd>{words}</dd>
      </div>
    ))}
  </dl>
);
