package chinelog.log.records;

/** The paper of the printed matter. */
public enum Paper {
  /** 210 mm by 297 mm. */
  A4,
  /** 8 1/2 in by 11 in, US Letter. */
  LETTER
}
