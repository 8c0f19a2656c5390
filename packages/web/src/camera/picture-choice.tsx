import type { JSX } from 'react';

/** A picture by file. */
export function PictureChoice({
  words,
  label,
  onFile,
  takesNow = false,
}: {
  readonly words: string;
  readonly label: string;
  readonly onFile: (file: File) => void;
  /** A phone goes straight to its own camera. */
  readonly takesNow?: boolean;
}): JSX.Element {
  return (
    <label className="file-choice">
      <span>{words}</span>
      <input
        type="file"
        aria-label={label}
        accept=".png,.jpg,.jpeg,image/png,image/jpeg"
        capture={takesNow ? 'environment' : undefined}
        onChange={({ target }) => {
          const [file] = target.files ?? [];
          if (file !== undefined) onFile(file);
          // the same file may be chosen again, when it has changed
          target.value = '';
        }}
      />
    </label>
  );
}
