// The family, the home screen: what is advised, the drawing or its table, the pane of the chosen jar, and the tools below.
import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import type { Drawing } from '../../core/contract';
import { useAppState } from '../state/store';
import { useRead } from '../state/use-read';
import { useNow } from '../parts/use-now';
import { useSize } from '../parts/use-size';
import { EmptyFamily } from './empty';
import { familyControl } from './family-actions';
import { FamilyDrawing } from './family-drawing';
import './family.css';
import { Find } from './find';
import './forced-colors.css';
import { kinOf } from './kin';
import { Legend } from './legend';
import { FamilyMap } from './map';
import { Newest } from './newest';
import { Pane } from './pane';
import './pane.css';
import { paneWidth } from './rooms';
import { Spoken, spokenName } from './spoken';
import './stage.css';
import { FamilyTable } from './table';
import './table.css';
import { Today } from './today';
import { Tools } from './tools';
import { useChosen } from './use-chosen';
import { useFolded } from './use-folded';
import type { LineNow } from './use-lines';
import { NO_LANES, useSpokenLane, useTurned } from './use-spoken-lane';
import { useThemeName } from './use-theme-name';

export type Spacing = Drawing['spacing'];

/** The home screen. */
export function Family() {
  const state = useAppState();
  // Until the keeper chooses one, the spacing is that in which the newest jars of all living lines are seen.
  const [wanted, setWanted] = useState<Spacing | null>(null);
  const read = useRead('family.drawing', { spacing: wanted });
  // While the other spacing is read the one before stays: what is chosen and where the window is are not lost.
  const [last, keep] = useState(read);
  if (read !== null && read !== last) keep(read);
  const answer = read ?? last;
  if ((state?.ledger?.jars ?? 0) === 0) return <EmptyFamily />;
  if (answer === null) return <p className="page soft family-awaited">Drawing the family…</p>;
  if (!answer.ok) return <p className="page">{answer.sentence}</p>;
  if (answer.value.keys.length === 0) return <EmptyFamily />;
  return <Drawn drawing={answer.value} spacing={wanted ?? answer.value.spacing} onSpacing={setWanted} />;
}

interface DrawnProps {
  readonly drawing: Drawing;
  readonly spacing: Spacing;
  readonly onSpacing: (spacing: Spacing) => void;
}

function Drawn({ drawing: laid, spacing, onSpacing }: DrawnProps) {
  const body = useRef<HTMLDivElement>(null);
  const size = useSize(body);
  const [asTable, setAsTable] = useState(false);
  const [legend, setLegend] = useState(false);
  const [lanes, setLanes] = useState(NO_LANES);
  const { pressed, turn } = useTurned(laid);
  const { drawing, newest, open, mates } = useFolded({ laid, size, asTable, pressed });
  const kin = useMemo(() => kinOf(drawing), [drawing]);
  const chosen = useChosen({ drawing, laid, asTable, turn });
  const { selectedKey, selected, target, goTo, goToId, select, close } = chosen;
  useEffect(() => {
    familyControl.close = () => {
      if (legend) setLegend(false);
      else if (selectedKey !== null) close();
    };
    return () => {
      familyControl.close = () => undefined;
    };
  }, [legend, close, selectedKey]);
  const { lines, unasked, settled, spoken, better } = useSpokenLane({ drawing, newest, pressed, lanes });
  const [lift, askLift] = useState<string | null>(null);
  const lifting = useCallback(() => askLift(null), []);
  const now = useNow();
  const warm = useMemo(() => now.holds.map(({ jars }) => jars.map(({ key }) => key)), [now.holds]);
  const theme = useThemeName();
  const lineOfLane = (lane: number | null): LineNow | null =>
    lines.get(drawing.lanes[lane ?? -1]?.line ?? '') ?? null;
  return (
    <div className="family">
      <h1 className="visually-hidden">Family</h1>
      <Newest drawing={drawing} newest={newest} />
      <div className="strip">
        <Spoken
          lane={settled === null ? undefined : drawing.lanes[settled]}
          line={lineOfLane(settled)}
          unasked={unasked}
          better={
            better === null ? null : { name: spokenName(drawing.lanes[better]), line: lineOfLane(better) }
          }
          onBetter={() => turn(better)}
          onShow={(id) => void goToId(id)}
          onLift={(jar) => {
            askLift(jar);
            void goToId(jar);
          }}
          looks={chosen.looksByKey}
        />
        <Today />
      </div>
      <div
        className="family-body"
        ref={body}
        style={size === null ? undefined : ({ '--pane': `${paneWidth(size)}px` } as React.CSSProperties)}
      >
        {legend && <Legend />}
        {asTable && <FamilyTable drawing={drawing} selected={selected} onSelect={select} />}
        {!asTable && size !== null && size.width > 0 && (
          <FamilyDrawing
            {...{ drawing, kin, newest, mates, open, selected, target, theme, size, spoken, lines, warm }}
            onSelect={select}
            pane={selectedKey !== null}
            onLanes={setLanes}
            onSpeakOf={turn}
            kept={now.kept}
            onGo={goTo}
          />
        )}
        {selectedKey !== null && (
          <SelectedPane
            jarKey={selectedKey}
            warm={warm.some((keys) => keys.includes(selectedKey))}
            line={lineOfLane(drawing.lane[selected ?? -1] ?? null)}
            lineName={spokenName(drawing.lanes[drawing.lane[selected ?? -1] ?? -1])}
            flagsByKey={chosen.flagsByKey}
            lift={lift}
            onLifting={lifting}
            onGo={goTo}
            onClose={close}
          />
        )}
      </div>
      <div className="family-tools">
        <Find onFound={goTo} />
        {asTable ? <span className="family-map unseen" /> : <FamilyMap drawing={drawing} theme={theme} />}
        <Tools {...{ spacing, onSpacing, asTable, legend }} onTable={setAsTable} onLegend={setLegend} />
      </div>
    </div>
  );
}

/** The pane asks by permanent id; the drawing knows only keys. */
function SelectedPane({
  jarKey,
  ...of
}: Omit<Parameters<typeof Pane>[0], 'id'> & { readonly jarKey: number }) {
  const answer = useRead('family.jars', { keys: [jarKey] });
  const id = answer?.ok ? answer.value.jars[0]?.id : undefined;
  if (id === undefined) return <aside className="pane" aria-label="About this jar" />;
  return <Pane id={id} {...of} />;
}
