import {
  absDependencies,
  addDependencies,
  atanDependencies,
  cbrtDependencies,
  ceilDependencies,
  compileDependencies,
  cosDependencies,
  create,
  divideDependencies,
  eDependencies,
  expDependencies,
  type FactoryFunctionMap,
  log10Dependencies,
  logDependencies,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  piDependencies,
  powDependencies,
  sinDependencies,
  sqrtDependencies,
  subtractDependencies,
  tanDependencies,
  unaryMinusDependencies,
  unitDependencies,
} from 'mathjs'

/** Each by its name, so that the packed service holds no other part of mathjs. */
const PARTS = [
  absDependencies,
  addDependencies,
  atanDependencies,
  cbrtDependencies,
  ceilDependencies,
  compileDependencies,
  cosDependencies,
  divideDependencies,
  eDependencies,
  expDependencies,
  log10Dependencies,
  logDependencies,
  maxDependencies,
  minDependencies,
  multiplyDependencies,
  piDependencies,
  powDependencies,
  sinDependencies,
  sqrtDependencies,
  subtractDependencies,
  tanDependencies,
  unaryMinusDependencies,
  unitDependencies,
]

/** mathjs with the parts that units and our formulas need. */
export function mathParts() {
  const parts: FactoryFunctionMap = {}
  for (const part of PARTS) Object.assign(parts, part)
  return create(parts)
}
