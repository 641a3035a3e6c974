/** Tells the timeline how many pixels it has, now and whenever that changes. */
export function watchWidth(frame, timeline) {
  let told = 0;
  const observer = new ResizeObserver(([entry]) => {
    const width = Math.floor(entry.contentRect.width);
    if (width > 0 && width !== told) {
      told = width;
      timeline.invokeMethodAsync("Resized", width);
    }
  });
  observer.observe(frame);
  return { stop: () => observer.disconnect() };
}
