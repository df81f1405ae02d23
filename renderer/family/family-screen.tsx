// The family, the home screen: what is advised, the drawing or its table, the pane of the chosen jar, and the tools below.
import { useCallback, useEffect, useMemo, useRef, useState, useSyncExternalStore } from 'react';
import type { Drawing } from '../../core/contract';
import type { VerdictWord } from '../../core/shapes/advice-replies';
import { call } from '../state/ledger-calls';
import { go, say, turnTo, useAppState, useLineInHand, usePlace } from '../state/store';
import { useRead } from '../state/use-read';
import { familyControl } from './family-actions';
import { FamilyDrawing, foldRoom, newestOfLane, paneWidth } from './family-drawing';
import { EmptyFamily } from './empty';
import './family.css';
import { Find } from './find';
import { kinOf } from './kin';
import { folded, mustFold } from './fold';
import { placedIn } from './lanes';
import { Legend } from './legend';
import { FamilyMap } from './map';
import { Newest, newestOf } from './newest';
import { Pane } from './pane';
import './pane.css';
import { Spoken } from './spoken';
import { spokenLane } from './spoken-lane';
import './stage.css';
import { FamilyTable } from './table';
import './table.css';
import './forced-colors.css';
import { Tools } from './tools';
import { Today } from './today';
import { useNow } from '../parts/use-now';
import { type LineNow, MOST_AT_ONCE, useLines } from './use-lines';
import { JUDGED_UNASKED } from '../parts/use-scores';
import { useSize } from '../parts/use-size';

export type Spacing = Drawing['spacing'];

const night = window.matchMedia('(prefers-color-scheme: dark)');
const systemIsDark = (): boolean => night.matches;
const onSystemTheme = (listen: () => void): (() => void) => {
  night.addEventListener('change', listen);
  return () => night.removeEventListener('change', listen);
};

/** The home screen. */
export function Family() {
  const state = useAppState();
  const [spacing, setSpacing] = useState<Spacing>('generation');
  const read = useRead('family.drawing', { spacing });
  // While the other spacing is read the one before stays: what is chosen and where the window is are not lost.
  const [last, keep] = useState(read);
  if (read !== null && read !== last) keep(read);
  const answer = read ?? last;
  if ((state?.ledger?.jars ?? 0) === 0) return <EmptyFamily />;
  if (answer === null) return <p className="page soft">Drawing the family…</p>;
  if (!answer.ok) return <p className="page">{answer.sentence}</p>;
  if (answer.value.keys.length === 0) return <EmptyFamily />;
  return <Drawn drawing={answer.value} spacing={spacing} onSpacing={setSpacing} />;
}

interface DrawnProps {
  readonly drawing: Drawing;
  readonly spacing: Spacing;
  readonly onSpacing: (spacing: Spacing) => void;
}

const NO_LINES: readonly string[] = [];

/** What a lane is turned to by: its line, where it has one. */
const handle = ({ line }: { readonly line: string | null }, at: number): string => line ?? `lane ${at}`;

function Drawn({ drawing: laid, spacing, onSpacing }: DrawnProps) {
  const body = useRef<HTMLDivElement>(null);
  const size = useSize(body);
  const width = size?.width ?? 0;
  const state = useAppState();
  const place = usePlace();
  const dark = useSyncExternalStore(onSystemTheme, systemIsDark);
  const [asTable, setAsTable] = useState(false);
  const [legend, setLegend] = useState(false);
  const [selectedKey, setSelectedKey] = useState<number | null>(null);
  const [target, setTarget] = useState<{ key: number; count: number } | null>(null);
  const [inSight, setInSight] = useState<readonly number[]>([]);
  const inHand = useLineInHand();
  const pressed = useMemo(() => {
    const at = laid.lanes.findIndex((lane, index) => handle(lane, index) === inHand);
    return at === -1 ? null : at;
  }, [laid, inHand]);
  const setPressed = useCallback(
    (at: number | null) => {
      const lane = at === null ? undefined : laid.lanes[at];
      if (at !== null && lane) turnTo(handle(lane, at));
    },
    [laid],
  );
  // In a window too low for all lanes one of them is whole, the others are folded to the line that goes on.
  const laneOf = useCallback(
    (key: number): number | null => laid.lane[laid.keys.indexOf(key)] ?? null,
    [laid],
  );
  const folding = useMemo(() => size !== null && mustFold(laid, foldRoom(size)), [laid, size]);
  const open = pressed ?? laid.lane[newestOf(laid)] ?? 0;
  const fold = useMemo(
    () => (folding && !asTable ? folded(laid, open) : null),
    [folding, asTable, laid, open],
  );
  const drawing = useMemo(() => placedIn(fold?.drawing ?? laid, width), [fold, laid, width]);
  const kin = useMemo(() => kinOf(drawing), [drawing]);
  const newest = useMemo(
    () => (fold === null ? newestOf(drawing) : newestOfLane(drawing, open)),
    [drawing, fold, open],
  );
  const indexOf = useMemo(() => new Map(Array.from(drawing.keys, (key, index) => [key, index])), [drawing]);
  const selected = selectedKey === null ? null : (indexOf.get(selectedKey) ?? null);

  const flagsByKey = useCallback(
    (key: number): number => drawing.flags[indexOf.get(key) ?? -1] ?? 0,
    [drawing, indexOf],
  );

  const looksByKey = (key: number): { setWord: number; flags: number } => ({
    setWord: drawing.setWord[indexOf.get(key) ?? -1] ?? 255,
    flags: flagsByKey(key),
  });

  const goTo = useCallback(
    (key: number) => {
      setPressed(laneOf(key));
      setSelectedKey(key);
      setTarget((before) => ({ key, count: (before?.count ?? 0) + 1 }));
    },
    [laneOf, setPressed],
  );
  const goToId = useCallback(
    async (id: string) => {
      const answer = await call('jar.get', { id });
      if (answer.ok) goTo(answer.value.view.key);
      else say(answer.sentence, 'caution');
    },
    [goTo],
  );
  const select = useCallback(
    (index: number) => {
      setSelectedKey(drawing.keys[index] ?? null);
      setPressed(drawing.lane[index] ?? null);
    },
    [drawing, setPressed],
  );
  const close = useCallback(() => {
    setSelectedKey(null);
    // The keyboard goes back to the jar that the pane was about.
    const back = document.querySelector<SVGElement | HTMLElement>(
      asTable ? `#row-${selectedKey}` : `#jar-${selectedKey}`,
    );
    back?.focus({ preventScroll: true });
  }, [asTable, selectedKey]);

  // Another screen sent the keeper here to see a jar.
  useEffect(() => {
    if (place.screen !== 'family' || place.focus?.startsWith('jar:') !== true) return;
    void call('jar.get', { id: place.focus.slice('jar:'.length) }).then((answer) => {
      go('family');
      if (answer.ok) goTo(answer.value.view.key);
      else say(answer.sentence, 'caution');
    });
  }, [place, goTo]);
  useEffect(() => {
    familyControl.close = () => {
      if (legend) setLegend(false);
      else if (selectedKey !== null) close();
    };
    return () => {
      familyControl.close = () => undefined;
    };
  }, [legend, close, selectedKey]);

  const targeted = useMemo(() => {
    const index = target === null ? undefined : indexOf.get(target.key);
    return target === null || index === undefined ? null : { index, count: target.count };
  }, [target, indexOf]);
  const newestLane = drawing.lane[newest] ?? 0;
  const unasked = drawing.keys.length > JUDGED_UNASKED;
  const asked = useMemo(() => {
    const first = pressed ?? newestLane;
    const ids = [first, ...inSight.filter((lane) => lane !== first)].flatMap(
      (lane) => drawing.lanes[lane]?.line ?? [],
    );
    // Nothing is in sight until the jars themselves are here: judging must not hold them up.
    return unasked || inSight.length === 0 ? NO_LINES : ids;
  }, [pressed, newestLane, inSight, drawing, unasked]);
  const lines = useLines(asked);
  const verdict = (lane: number): VerdictWord | null | undefined => {
    const id = drawing.lanes[lane]?.line ?? '';
    // Of a lane without a line, and of more lines than are judged at once, nothing will be known.
    return (
      lines.get(id)?.verdict ?? (unasked || !asked.slice(0, MOST_AT_ONCE).includes(id) ? null : undefined)
    );
  };
  const known = spokenLane({ pressed, newest: newestLane, inSight, verdict });
  // A lane that comes into sight is worked out first: until then the strip says what it said.
  const [said, keepSaid] = useState<number | null>(null);
  if (known !== null && known !== said) keepSaid(known);
  const settled = known ?? (said !== null && inSight.includes(said) ? said : null);
  const spoken = settled ?? newestLane;
  const now = useNow();
  const warm = useMemo(() => now.holds.map(({ jars }) => jars.map(({ key }) => key)), [now.holds]);
  const theme = `${state?.preferences.theme} ${dark}`;
  return (
    <div className="family">
      <h1 className="visually-hidden">Family</h1>
      <Newest drawing={drawing} newest={newest} />
      <div className="strip">
        <Spoken
          lane={settled === null ? undefined : drawing.lanes[settled]}
          line={settled === null ? null : (lines.get(drawing.lanes[settled]?.line ?? '') ?? null)}
          unasked={unasked}
          onShow={(id) => void goToId(id)}
          looks={looksByKey}
        />
        <Today holds={now.holds} />
      </div>
      <div
        className="family-body"
        ref={body}
        style={size === null ? undefined : ({ '--pane': `${paneWidth(size)}px` } as React.CSSProperties)}
      >
        {legend && <Legend />}
        {asTable ? (
          <FamilyTable drawing={drawing} selected={selected} onSelect={select} />
        ) : (
          size !== null &&
          size.width > 0 && (
            <FamilyDrawing
              drawing={drawing}
              kin={kin}
              newest={newest}
              mates={fold?.mates ?? null}
              open={fold === null ? null : open}
              selected={selected}
              onSelect={select}
              target={targeted}
              theme={theme}
              size={size}
              pane={selectedKey !== null}
              onLanes={setInSight}
              spoken={spoken}
              onSpeakOf={setPressed}
              lines={lines}
              warm={warm}
              kept={now.kept}
              onGo={goTo}
            />
          )
        )}
        {selectedKey !== null && (
          <SelectedPane
            jarKey={selectedKey}
            warm={warm.some((keys) => keys.includes(selectedKey))}
            line={lines.get(drawing.lanes[drawing.lane[selected ?? -1] ?? -1]?.line ?? '') ?? null}
            flagsByKey={flagsByKey}
            onGo={goTo}
            onClose={close}
          />
        )}
      </div>
      <div className="family-tools">
        <Find onFound={goTo} />
        {asTable ? <span className="family-map unseen" /> : <FamilyMap drawing={drawing} theme={theme} />}
        <Tools
          spacing={spacing}
          onSpacing={onSpacing}
          asTable={asTable}
          onTable={setAsTable}
          legend={legend}
          onLegend={setLegend}
        />
      </div>
    </div>
  );
}

/** The pane asks by permanent id; the drawing knows only keys. */
function SelectedPane(props: {
  readonly jarKey: number;
  readonly warm: boolean;
  readonly line: LineNow | null;
  readonly flagsByKey: (key: number) => number;
  readonly onGo: (key: number) => void;
  readonly onClose: () => void;
}) {
  const answer = useRead('family.jars', { keys: [props.jarKey] });
  const id = answer?.ok ? answer.value.jars[0]?.id : undefined;
  if (id === undefined) return <aside className="pane" aria-label="About this jar" />;
  const { warm, line, flagsByKey, onGo, onClose } = props;
  return <Pane id={id} warm={warm} line={line} flagsByKey={flagsByKey} onGo={onGo} onClose={onClose} />;
}
