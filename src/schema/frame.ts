import { type Static, Type } from 'typebox'
import { oneOf } from './one-of.ts'
import { ref, share } from './shared.ts'

export const Severity = oneOf(['blocker', 'warning', 'note'], 'How much it matters')
export type Severity = Static<typeof Severity>

/** Any JSON value. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json }

const PatchStep = share(
  'PatchStep',
  Type.Object(
    {
      op: oneOf(['add', 'replace', 'remove'], 'What is done; add also replaces what stands there already'),
      path: Type.String({ description: 'JSON Pointer into the request', examples: ['/box/kind'] }),
      value: Type.Optional(
        Type.Unsafe<Json>({
          description: 'What is put there, any JSON; left out with remove',
          examples: ['closed'],
        }),
      ),
    },
    { additionalProperties: false, description: 'One step of a JSON Patch (RFC 6902)' },
  ),
)
export type PatchStep = Static<typeof PatchStep>

export const Fix = share(
  'Fix',
  Type.Object(
    {
      do: Type.String({ description: 'The same text as the remedy it belongs to' }),
      patch: Type.Array(ref(PatchStep), {
        description: 'JSON Patch (RFC 6902) on the request; all steps together make the remedy',
      }),
    },
    { additionalProperties: false, description: 'A remedy as a change of the request' },
  ),
)
export type Fix = Static<typeof Fix>

export const Finding = share(
  'Finding',
  Type.Object(
    {
      code: Type.String({ description: 'Stable name of the rule' }),
      severity: Severity,
      message: Type.String({ description: 'What was found, in plain words with units' }),
      at: Type.String({ description: 'JSON Pointer into the request' }),
      value: Type.Optional(Type.Number({ description: 'The figure found' })),
      limit: Type.Optional(Type.Number({ description: 'The figure it is held against' })),
      unit: Type.Optional(Type.String({ description: 'Unit of both' })),
      remedies: Type.Array(Type.String(), { description: 'What to do, cheapest first' }),
      fixes: Type.Optional(
        Type.Array(ref(Fix), {
          description:
            'Those remedies that are a plain change of the request, in the same order; left out when none is',
        }),
      ),
    },
    { additionalProperties: false, description: 'One thing the maker should know' },
  ),
)
export type Finding = Static<typeof Finding>

export const Assumption = share(
  'Assumption',
  Type.Object(
    {
      at: Type.String({ description: 'JSON Pointer to the field that was not given' }),
      value: Type.Unsafe<number | string | boolean | null>({
        type: ['number', 'string', 'boolean', 'null'],
        description: 'What was filled in',
      }),
      unit: Type.String({ description: 'Unit of the value, empty for ratios and words' }),
      why: Type.String({ description: 'Where the value comes from' }),
    },
    { additionalProperties: false, description: 'A value that was not given and was filled in' },
  ),
)
export type Assumption = Static<typeof Assumption>

export const WorkingStep = share(
  'WorkingStep',
  Type.Object(
    {
      quantity: Type.String({ description: 'What is worked out' }),
      formula: Type.String({ description: 'The formula as evaluated' }),
      with: Type.Record(Type.String(), Type.Number(), { description: 'The values put in' }),
      result: Type.Number({ description: 'What came out' }),
      unit: Type.String({ description: 'Unit of the result' }),
      source: Type.String({ description: 'Where the formula is published' }),
    },
    { additionalProperties: false, description: 'One line of the printed working' },
  ),
)
export type WorkingStep = Static<typeof WorkingStep>

export const Verdict = oneOf(
  ['ready', 'review', 'blocked'],
  'ready: build it; review: read the warnings first; blocked: do not build it like this',
)
export type Verdict = Static<typeof Verdict>

/** The members every answer begins with. */
export const frameFields = {
  answer: Type.String({ description: 'The result in one or two plain sentences' }),
  verdict: Verdict,
  findings: Type.Array(ref(Finding), { description: 'Most severe first' }),
  assumptions: Type.Array(ref(Assumption), { description: 'Every value that was filled in' }),
  cautions: Type.Array(Type.String(), { description: 'Where the work can hurt someone' }),
  working: Type.Optional(Type.Array(ref(WorkingStep), { description: 'Only with ?working=true' })),
}
