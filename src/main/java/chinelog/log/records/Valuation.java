package chinelog.log.records;

/** What material costs that was bought at several prices. */
public enum Valuation {
  /** What was bought first is used first, at its own price. */
  FIFO,
  /** Whenever a lot comes in, all that is held gets one price: the average by amount. */
  AVERAGE
}
