import { useEffect, useState } from "preact/hooks";

const asked = "(prefers-color-scheme: dark)";

/** Whether the person wants dark pages. */
export function useDark(): boolean {
  const [dark, setDark] = useState(() => matchMedia(asked).matches);
  useEffect(() => {
    const query = matchMedia(asked);
    const follow = () => setDark(query.matches);
    query.addEventListener("change", follow);
    return () => query.removeEventListener("change", follow);
  }, []);
  return dark;
}
