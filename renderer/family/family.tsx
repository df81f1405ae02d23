// The family, the home screen.
import { useAppState } from '../app/store';

/** The home screen. */
export function Family() {
  const state = useAppState();
  return (
    <div className="page stack">
      <h1>Family</h1>
      <p>{state?.ledger?.jars ?? 0} jars</p>
    </div>
  );
}
