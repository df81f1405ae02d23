// What is shown before a ledger is open.
/** The first screen: no ledger is open yet. */
export function Start() {
  return (
    <div className="page stack">
      <h1>Jarline</h1>
      <p>No ledger is open.</p>
    </div>
  );
}
