/** What the fields of practice, supplies and crew have in common. */
import type { Crew, Practice, Supplies } from '@halfcup/core/plan';
import type { FieldProps } from './target.ts';

export interface RuleProps<T> {
  /** The station whose own rules these are; without it, the plan's. */
  readonly station?: string | undefined;
  readonly about?: string | undefined;
  /** What holds where the file says nothing. */
  readonly fallback: T;
}

export type PracticeProps = RuleProps<Practice>;
export type SuppliesProps = RuleProps<Supplies>;
export type CrewProps = RuleProps<Crew>;

/** The field of one rule, under "practice", "supplies" or "crew". */
export const ruleField = (props: RuleProps<unknown>, path: readonly string[], label: string): FieldProps => ({
  label,
  path,
  station: props.station,
  about: props.about,
});
