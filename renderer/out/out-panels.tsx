// The panels for what goes out and comes in, whichever of them is open.
import { GiveJar } from './give-jar';
import { LabelsPanel } from './labels-panel';
import { useOutShown } from './out-shown';
import { ReceiveJar } from './receive-jar';
import { TakeEverythingOut } from './take-everything-out';

export function OutPanels() {
  const shown = useOutShown();
  if (shown === null) return null;
  if (shown.panel === 'give') return <GiveJar key={shown.jar} jar={shown.jar} label={shown.label} />;
  if (shown.panel === 'labels') return <LabelsPanel key={shown.jar} jar={shown.jar} label={shown.label} />;
  return shown.panel === 'receive' ? <ReceiveJar /> : <TakeEverythingOut />;
}
