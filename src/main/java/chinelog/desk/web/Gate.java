package chinelog.desk.web;

import com.sun.net.httpserver.Headers;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/**
 * Knows the maker's browser from everybody else. A key in the first address lets one browser in: it
 * is exchanged for a cookie, and is good until a request bears that cookie, since some browsers ask
 * for an address twice, but for a minute at most. Every request after it must bear such a cookie
 * and must come from the desk's own pages.
 *
 * <p>The host is checked as a name that leads to this machine may be anybody's (DNS rebinding); the
 * origin, as any page on the web may send forms here.
 */
final class Gate {

  private static final int SECRET_BYTES = 32;
  private static final SecureRandom RANDOM = new SecureRandom();

  private final String host;
  private final String cookieName;

  /** A browser asks again at once, if at all. */
  private static final long LIFE_NANOS = TimeUnit.MINUTES.toNanos(1);

  /** Of a time that only runs on, whatever the clock is set to. */
  private final LongSupplier nanos;

  /**
   * What lets a browser in, and what it is known by then.
   *
   * @param since when it was first asked for; nothing of the key that is next
   */
  private record Pass(String key, String cookie, long since) {
    static Pass fresh() {
      return new Pass(secret(), secret(), 0);
    }

    Pass takenAt(long now) {
      return new Pass(key, cookie, now);
    }
  }

  private Pass next = Pass.fresh();

  /** Keys that were taken, and whose cookies no request has borne yet. */
  private final List<Pass> taken = new ArrayList<>();

  private final List<String> cookies = new ArrayList<>();

  /**
   * @param port on which the desk listens; browsers keep cookies by host alone
   * @param nanos a time that only runs on, from whenever
   */
  Gate(int port, LongSupplier nanos) {
    this.nanos = nanos;
    this.host = "127.0.0.1:" + port;
    this.cookieName = "chinelog-" + port;
  }

  static String secret() {
    byte[] bytes = new byte[SECRET_BYTES];
    RANDOM.nextBytes(bytes);
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
  }

  String origin() {
    return "http://" + host;
  }

  /** The key that lets a browser in next. */
  synchronized String key() {
    return next.key;
  }

  /**
   * The cookie, as it is sent, that a browser gets for a key.
   *
   * @throws RefusedException if the key is none, or a browser came in with it, or asked for it more
   *     than a minute ago
   */
  synchronized String exchange(String offered) throws RefusedException {
    long now = nanos.getAsLong();
    taken.removeIf(pass -> now - pass.since > LIFE_NANOS);
    if (same(offered, next.key)) {
      taken.add(next.takenAt(now));
      cookies.add(next.cookie);
      next = Pass.fresh();
    }
    for (Pass pass : taken) {
      if (same(offered, pass.key)) {
        return cookieName + "=" + pass.cookie + "; Path=/; HttpOnly; SameSite=Strict";
      }
    }
    throw new RefusedException(
        401, "This address was used before. Type the command \u201copen\u201d again.");
  }

  /**
   * Lets a request through that may come from the desk's own pages, or from an address typed in.
   *
   * @throws RefusedException if it cannot
   */
  void checkSender(String method, Headers headers) throws RefusedException {
    if (!host.equals(only(headers, "Host"))) {
      throw new RefusedException(421, "This is not the address of the desk.");
    }
    boolean changes = !method.equals("GET") && !method.equals("HEAD");
    String origin = headers.containsKey("Origin") ? only(headers, "Origin") : null;
    if (origin == null ? changes : !origin.equals(origin())) {
      throw new RefusedException(403, "Another site may not talk to the desk.");
    }
    String site = headers.getFirst("Sec-Fetch-Site");
    boolean fromElsewhere = site != null && !site.equals("same-origin") && !site.equals("none");
    boolean opensPage = "navigate".equals(headers.getFirst("Sec-Fetch-Mode"));
    if (fromElsewhere && (changes || !opensPage)) {
      throw new RefusedException(403, "Another site may not talk to the desk.");
    }
  }

  /**
   * @throws RefusedException if the request bears no cookie of a browser that was let in
   */
  void checkCookie(Headers headers) throws RefusedException {
    List<String> sent = headers.getOrDefault("Cookie", List.of());
    for (String line : sent) {
      for (String pair : line.split(";")) {
        String[] parts = pair.strip().split("=", 2);
        if (parts.length == 2 && parts[0].equals(cookieName) && isKnown(parts[1])) {
          return;
        }
      }
    }
    throw new RefusedException(
        401, "This browser was not let in. Type the command \u201copen\u201d again.");
  }

  /** Whether a browser was let in with a cookie; its key is good no more from then on. */
  private synchronized boolean isKnown(String cookie) {
    taken.removeIf(pass -> same(cookie, pass.cookie));
    return cookies.stream().anyMatch(known -> same(cookie, known));
  }

  private static @Nullable String only(Headers headers, String name) throws RefusedException {
    List<String> values = headers.getOrDefault(name, List.of());
    if (values.size() > 1) {
      throw new RefusedException(400, "A header came twice.");
    }
    return values.isEmpty() ? null : values.get(0);
  }

  /** In a time that does not tell how much of it is right. */
  private static boolean same(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }
}
