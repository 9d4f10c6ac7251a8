package chinelog.reckon;

import static org.assertj.core.api.Assertions.assertThat;

import chinelog.log.records.Log;
import java.lang.management.ManagementFactory;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

class ReckonerSpeedTest {

  @Test
  @Timeout(value = 120, unit = TimeUnit.SECONDS)
  void aLargeLogIsReckonedInTimeThatGrowsWithItsSize() {
    Log small = Benchmark.log(1000);
    Log large = Benchmark.log(3000);
    Reckoner.reckon(small);
    long start = cpuNanos();
    Reckoner.Reckoning first = Reckoner.reckon(small);
    long middle = cpuNanos();
    Reckoner.Reckoning second = Reckoner.reckon(large);
    long end = cpuNanos();
    assertThat(first.problems()).isEmpty();
    assertThat(second.facts().byName()).hasSizeGreaterThan(3 * 30000);
    // Three times the log; a square would take nine times as long.
    assertThat(end - middle).isLessThan(6 * Math.max(middle - start, 200_000_000L));
  }

  /** Of this thread alone, as the machine may be busy with other things. */
  private static long cpuNanos() {
    return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
  }
}
