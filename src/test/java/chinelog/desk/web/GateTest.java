package chinelog.desk.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.sun.net.httpserver.Headers;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

/** A key in an address lets one browser in, and is not left lying about. */
class GateTest {

  private final AtomicLong nanos = new AtomicLong(Long.MAX_VALUE - 5);
  private final Gate gate = new Gate(4000, nanos::get);

  private void pass(int seconds) {
    nanos.addAndGet(TimeUnit.SECONDS.toNanos(seconds));
  }

  private static Headers bearing(String cookie) {
    Headers headers = new Headers();
    headers.add("Cookie", cookie.substring(0, cookie.indexOf(';')));
    return headers;
  }

  @Test
  void aKeyWhoseBrowserNeverCameBackIsGoodForAMinuteAndItsCookieStaysGood() throws Exception {
    String key = gate.key();
    pass(3600);
    String cookie = gate.exchange(key);
    pass(59);
    assertThat(gate.exchange(key)).as("asked for twice").isEqualTo(cookie);
    pass(2);
    assertThatThrownBy(() -> gate.exchange(key)).isInstanceOf(RefusedException.class);
    gate.checkCookie(bearing(cookie));
    assertThat(gate.exchange(gate.key())).isNotEqualTo(cookie);
  }

  @Test
  void aKeyIsGoodNoMoreOnceItsCookieWasBorne() throws Exception {
    String key = gate.key();
    String cookie = gate.exchange(key);
    gate.checkCookie(bearing(cookie));
    assertThatThrownBy(() -> gate.exchange(key)).isInstanceOf(RefusedException.class);
  }
}
