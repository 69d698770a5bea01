/** What can happen to a blanket that a group makes. The list of events is the truth; everything else is read off it. */
import type { Stamp } from '../base/history.ts';
import type { BlanketSpec } from '../blanket/pieces.ts';
import type { MotifSpec, Yarn } from '../yarn/motif.ts';

/** A kind of motif as it was when the blanket was opened: later changes to the organiser's own motif do not move the goal. */
export interface GroupKind extends MotifSpec {
  /** Motifs wanted: the cells of the layout that hold this kind. */
  readonly quota: number;
  /** Motifs taken beyond the quota. */
  readonly spares: number;
}

export interface GroupPlan extends BlanketSpec {
  readonly name: string;
  readonly kinds: readonly GroupKind[];
  readonly columns: number;
  readonly rows: number;
  /** Row by row from the top left: index of the kind, quarter turns. */
  readonly layout: readonly { readonly kind: number; readonly turn: number }[];
  /** What one motif should measure along a side, cm. */
  readonly side: number;
  /** Per cent by which a side may be off before it is flagged. */
  readonly tolerance: number;
  /** The day by which motifs are wanted, YYYY-MM-DD. */
  readonly closes?: string;
  readonly yarns: readonly (Yarn & { readonly hex?: string })[];
  /** Whether anyone may join, or only whom the organiser names. */
  readonly joinable: 'anyone' | 'named';
}

export interface Member {
  readonly maker: string;
  readonly name: string;
  /** Motifs a week she can make. */
  readonly perWeek: number;
  /** Colours she has; empty means any. */
  readonly colours: readonly string[];
}

/** What happened, without who and when. */
export type Happening =
  /** `name` is what the organiser is called. */
  | { readonly did: 'opened'; readonly name: string; readonly plan: GroupPlan }
  | { readonly did: 'invited'; readonly name: string; readonly maker: string }
  | ({ readonly did: 'joined' } & Member)
  | { readonly did: 'left'; readonly maker: string }
  | { readonly did: 'pledged'; readonly maker: string; readonly kind: number; readonly motifs: number }
  | { readonly did: 'released'; readonly maker: string; readonly kind: number; readonly motifs: number }
  /** `pieces` are numbered on from 1 over the whole blanket, in order of handing in. */
  | {
      readonly did: 'handed-in';
      readonly maker: string;
      readonly kind: number;
      readonly motifs: number;
      readonly side?: number;
      /** Grams of all of them together. */
      readonly weight?: number;
    }
  | { readonly did: 'accepted'; readonly pieces: readonly number[] }
  | { readonly did: 'returned'; readonly pieces: readonly number[]; readonly reason: string }
  /** The organiser asked whether an old pledge still stands; after the notice it may be offered again. */
  | { readonly did: 'reminded'; readonly maker: string }
  /** A maker says that what she has pledged still stands. */
  | { readonly did: 'kept'; readonly maker: string }
  /** The organiser keeps a maker from taking part: what she has pledged is open again, what was accepted of hers stays. */
  | { readonly did: 'barred'; readonly maker: string; readonly reason: string }
  /** She may take part again. */
  | { readonly did: 'readmitted'; readonly maker: string }
  /** The organiser asks somebody to run the blanket; nothing changes before she says yes. */
  | { readonly did: 'offered-over'; readonly to: string; readonly name: string }
  /** She says no. */
  | { readonly did: 'declined'; readonly maker: string }
  | { readonly did: 'handed-over'; readonly to: string; readonly name: string }
  | { readonly did: 'closed' }
  | { readonly did: 'reopened'; readonly closes?: string }
  /** Event number `event` (counted from 0) no longer counts. */
  | { readonly did: 'undone'; readonly event: number };

export type GroupEvent = Happening & Stamp;
