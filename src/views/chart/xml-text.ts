import { escaped } from '../markup-text.ts'

/** Signs that XML 1.0 cannot hold, not even escaped: control signs, halves of a surrogate pair, U+FFFE and U+FFFF. */
const NO_XML =
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the very signs to be found
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]|[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g

/** Text made safe to stand in XML, in an attribute too; what XML cannot hold becomes a replacement sign. */
export const xmlText = (text: string): string => escaped(text.replace(NO_XML, '\ufffd'))
