import { type Static, Type } from 'typebox'
import { share } from './shared.ts'

export const Problem = share(
  'Problem',
  Type.Object(
    {
      type: Type.String({ description: 'Address of the description of this kind of problem' }),
      title: Type.String({ description: 'The kind of problem in words' }),
      status: Type.Integer({ description: 'HTTP status' }),
      detail: Type.String({ description: 'What happened here' }),
      instance: Type.String({ description: 'Name of this one occurrence' }),
      errors: Type.Array(
        Type.Object(
          {
            at: Type.String({ description: 'JSON Pointer to the field' }),
            message: Type.String({ description: 'What was expected' }),
          },
          { additionalProperties: false },
        ),
        { description: 'Every fault found' },
      ),
    },
    { additionalProperties: false, description: 'An error, as RFC 9457 lays it out' },
  ),
)
export type Problem = Static<typeof Problem>
