/**
 * One line of the printed working: a formula as text in the notation of mathjs, with the values to put in.
 * It is evaluated only when somebody asks for the working, and a test holds it equal to the plain code.
 */
export interface Formula {
  quantity: string
  formula: string
  with: Record<string, number>
  unit: string
  source: string
}
