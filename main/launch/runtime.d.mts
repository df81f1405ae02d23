export interface Runtime {
  readonly executable: string;
  readonly dist: string;
  readonly source: 'asked for' | 'official' | 'stand-in';
}
export function findRuntime(): Runtime;
export function machineFlags(): string[];
