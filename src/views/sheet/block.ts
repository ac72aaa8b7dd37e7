import type { Severity, Verdict } from '../../schema/frame.ts'
import type { Drawing } from '../drawing/drawing.ts'
import type { Code } from './code.ts'

/** What a build sheet is made of, whatever it is printed as. */
export interface Sheet {
  title: string
  verdict: Verdict
  /** The verdict in words. */
  said: string
  /** The sentences of the answer. */
  answer: string
  sections: readonly Section[]
}

export interface Section {
  heading: string
  blocks: readonly Block[]
}

export interface Column {
  title: string
  /** Share of the width of the table. */
  share: number
  /** Numbers stand to the right, so that their digits do. */
  isNumber?: boolean
}

export type Block =
  | { kind: 'heading'; text: string }
  | { kind: 'paragraph'; text: string }
  | { kind: 'list'; items: readonly string[] }
  | { kind: 'table'; columns: readonly Column[]; rows: readonly (readonly string[])[] }
  | { kind: 'caution'; text: string }
  | { kind: 'finding'; severity: Severity; message: string; remedies: readonly string[] }
  /** A chart as it is drawn for a page. */
  | { kind: 'chart'; svg: string }
  /** A drawing among the text, made smaller where it is too wide. */
  | { kind: 'drawing'; id: string; drawing: Drawing }
  /** Drawings with pages of their own on paper; what a page of the web shows in their place. */
  | { kind: 'pages'; what: string; pages: readonly Drawing[]; instead: readonly OnPage[] }
  /** A code to scan, and words beside it. */
  | { kind: 'code'; link: string; code: Code; says: readonly string[] }

/** What only a page of the web shows, where paper has drawings of its own. */
export type OnPage =
  | { kind: 'drawing'; id: string; drawing: Drawing }
  /** A drawing that must never be made smaller. */
  | { kind: 'true-size'; id: string; drawing: Drawing }
  | { kind: 'table'; columns: readonly Column[]; rows: readonly (readonly string[])[] }
  | { kind: 'paragraph'; text: string }
