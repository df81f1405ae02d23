// The panels for what goes out and comes in, whichever of them is open.
import { FindByLabel } from './find-by-label';
import { GoBack } from './go-back';
import { GiveJar } from './give-jar';
import { LabelsPanel } from './labels-panel';
import { useOutShown } from './out-shown';
import { ReportsPanel } from './reports-panel';
import { ReceiveJar } from './receive-jar';
import { TakeEverythingOut } from './take-everything-out';

export function OutPanels() {
  const shown = useOutShown();
  if (shown === null) return null;
  if (shown.panel === 'give') return <GiveJar key={shown.jar} jar={shown.jar} label={shown.label} />;
  if (shown.panel === 'labels')
    return <LabelsPanel key={shown.jar} jar={shown.jar} label={shown.label} all={shown.mates === true} />;
  if (shown.panel === 'reports')
    return <ReportsPanel kind={shown.kind ?? null} line={shown.line ?? null} jar={shown.jar ?? null} />;
  if (shown.panel === 'find') return <FindByLabel />;
  if (shown.panel === 'backups') return <GoBack />;
  return shown.panel === 'receive' ? <ReceiveJar handed={shown.file ?? null} /> : <TakeEverythingOut />;
}
