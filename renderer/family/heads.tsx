// The head of each lane: its name, what it is called, the day it was founded, and the packets it was started from. In a
// gutter left of the jars where the window has room for one, else in a line above the lane. Moves with the drawing by CSS
// variables, so that a pan renders nothing.
import { type CSSProperties, memo } from 'react';
import { dayLabel } from '../../core/lineage/labels';
import { type Away, HEAD, type Lane, namedByDay, type PlacedHead } from './lanes';

const MOST_CELLS = 8;
/** A longer name takes two lines of its packet. */
const ONE_LINE = 14;

/** A packet: the name on its label and a cell for each strain declared; a received culture has a wave. */
function Packet({ packet }: { readonly packet: Lane['packets'][number] }) {
  const cells = Math.min(packet.strains.length, MOST_CELLS);
  const long = packet.name.length > ONE_LINE;
  return (
    <span className="packet" title={packet.name} style={{ height: HEAD.packet - 6 }}>
      <span className="packet-name">{packet.name}</span>
      {packet.culture ? (
        <svg className="packet-wave" viewBox="0 0 76 10" aria-hidden="true">
          <path d="M2 5Q10 -2 18 5T34 5T50 5T66 5" />
        </svg>
      ) : cells === 0 ? (
        !long && <span className="soft">strains not noted</span>
      ) : (
        <span className="packet-cells" aria-hidden="true">
          {packet.strains.slice(0, MOST_CELLS).map((strain) => (
            <span key={strain} />
          ))}
        </span>
      )}
    </span>
  );
}

const foundedWords = ({ founded, packets, line }: Lane): string => {
  if (line === null) return founded === null ? 'day not known' : `from ${dayLabel(founded, true)}`;
  const how = packets.length > 0 && packets.every(({ culture }) => culture) ? 'received' : 'founded';
  return founded === null ? how : `${how} ${dayLabel(founded, true)}`;
};

/** "from Blue Tin (2 strains) and Meadow Pot (1 strain)", after what is seen. */
function packetWords({ packets }: Lane): string {
  const words = packets.map(({ name, strains, culture }) =>
    culture
      ? name
      : `${name} (${strains.length === 0 ? 'strains not noted' : `${strains.length} ${strains.length === 1 ? 'strain' : 'strains'}`})`,
  );
  return words.length === 0 ? '' : `from ${words.join(' and ')}`;
}

interface Props {
  readonly lanes: readonly Lane[];
  readonly heads: readonly PlacedHead[];
  readonly narrow: boolean;
  /** The lane that is whole while the others are folded; null: none is folded. */
  readonly open: number | null;
  /** What each line is called, by its id. */
  readonly standings: ReadonlyMap<string, string>;
  /** The lane that is spoken of above the drawing. */
  readonly spoken: number;
  /** Where the jars of each lane lie that has none in sight. */
  readonly away: readonly Away[];
  readonly onPress: (lane: number) => void;
}

export const Heads = memo(function Heads(props: Props) {
  const { lanes, heads, narrow, open, standings, spoken, away, onPress } = props;
  return (
    <div className={narrow ? 'lane-heads narrow' : 'lane-heads'}>
      {heads.map(({ lane: at, detail, y, last, height, x }) => {
        const lane = lanes[at];
        if (!lane) return null;
        const standing = lane.line === null ? undefined : standings.get(lane.line);
        const isFolded = open !== null && open !== at;
        const day = isFolded ? 'folded to its level line' : namedByDay(lane) ? null : foundedWords(lane);
        return (
          <button
            key={lane.line ?? `${lane.name} ${at}`}
            type="button"
            className={`lane-head${x === null ? '' : ' at-end'}${narrow && height < HEAD.name ? ' low' : ''}`}
            style={{ '--y': y, '--last': last, '--x': x ?? 0, height } as CSSProperties}
            aria-current={at === spoken}
            title={isFolded ? `Unfold ${lane.name}` : `To the newest jar of ${lane.name}`}
            aria-expanded={open === null ? undefined : !isFolded}
            onClick={() => onPress(at)}
          >
            <span className={lane.name.length > 8 ? 'lane-name long' : 'lane-name'}>{lane.name}</span>
            {detail !== 'name' && standing !== undefined && <strong>{standing}</strong>}
            {away[at] && (
              <span className="lane-away">
                {away[at] === 'left' ? '← to its newest jar' : 'to its newest jar →'}
              </span>
            )}
            {(detail === 'day' || detail === 'packets') && day !== null && !away[at] && (
              <span className="soft">{day}</span>
            )}
            {detail === 'packets' && !isFolded && !away[at] && (
              <span className="packets">
                {lane.packets.map((packet) => (
                  <Packet key={packet.name} packet={packet} />
                ))}
              </span>
            )}
            <span className="visually-hidden">{packetWords(lane)}, to its newest jar</span>
          </button>
        );
      })}
    </div>
  );
});
