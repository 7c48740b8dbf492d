/** Breaks a text at spaces to a width, each line after the first indented. A word longer than the width stands alone. */
export function wrapText(text: string, width: number, indent = ""): string[] {
  const lines: string[] = [];
  let line = "";
  for (const word of text.split(/[ \n\t]+/)) {
    if (word === "") continue;
    const start = lines.length === 0 ? "" : indent;
    if (line === "") line = start + word;
    else if (line.length + 1 + word.length <= width) line += ` ${word}`;
    else {
      lines.push(line);
      line = indent + word;
    }
  }
  if (line.trim() !== "") lines.push(line);
  return lines;
}
