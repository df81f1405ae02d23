// The drawing's few controls.
import { familyControl } from './family-actions';

interface Props {
  readonly spacing: 'generation' | 'calendar';
  readonly onSpacing: (spacing: 'generation' | 'calendar') => void;
  readonly asTable: boolean;
  readonly onTable: (asTable: boolean) => void;
  readonly legend: boolean;
  readonly onLegend: (open: boolean) => void;
}

export function Tools({ spacing, onSpacing, asTable, onTable, legend, onLegend }: Props) {
  return (
    <div className="family-buttons">
      <fieldset className="segments" aria-label="How the family is shown">
        <button
          className="button"
          type="button"
          aria-pressed={!asTable && spacing === 'generation'}
          onClick={() => {
            onTable(false);
            onSpacing('generation');
          }}
        >
          Generations
        </button>
        <button
          className="button"
          type="button"
          aria-pressed={!asTable && spacing === 'calendar'}
          onClick={() => {
            onTable(false);
            onSpacing('calendar');
          }}
        >
          Calendar
        </button>
        <button className="button" type="button" aria-pressed={asTable} onClick={() => onTable(true)}>
          Table
        </button>
      </fieldset>
      {/* Beside the table there is nothing to zoom; the buttons keep their room, so that no other one moves. */}
      <fieldset className={asTable ? 'segments unseen' : 'segments'} aria-label="Zoom">
        <button
          className="button"
          type="button"
          aria-label="Farther"
          title="Farther (−, or Ctrl and scroll)"
          onClick={() => familyControl.farther()}
        >
          −
        </button>
        <button
          className="button"
          type="button"
          title="Fit the whole family (0)"
          onClick={() => familyControl.fit()}
        >
          Fit
        </button>
        <button
          className="button"
          type="button"
          aria-label="Closer"
          title="Closer (+, or Ctrl and scroll)"
          onClick={() => familyControl.closer()}
        >
          +
        </button>
      </fieldset>
      <button
        className="button quiet"
        type="button"
        aria-expanded={legend}
        aria-controls="family-legend"
        onClick={() => onLegend(!legend)}
      >
        Signs
      </button>
    </div>
  );
}
