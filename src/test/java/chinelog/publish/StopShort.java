package chinelog.publish;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.CopyOption;
import java.nio.file.Files;
import java.nio.file.Path;
import net.bytebuddy.jar.asm.ClassReader;
import net.bytebuddy.jar.asm.ClassVisitor;
import net.bytebuddy.jar.asm.ClassWriter;
import net.bytebuddy.jar.asm.MethodVisitor;
import net.bytebuddy.jar.asm.Opcodes;

/**
 * A Java of its own that publishes a log and waits before one of the renamings of the swap, so that
 * it can be killed there. The class that renames is the one that is tested, but for whom it asks.
 */
public final class StopShort {

  private static final String MOVES = "chinelog/publish/Shelf";
  private static final String OWN = StopShort.class.getName().replace('.', '/');

  private static int left;
  private static Path mark = Path.of("");

  private StopShort() {}

  /**
   * Arguments: the log, the renaming before which to wait, from 1, and the file to write once that
   * is reached.
   */
  public static void main(String[] args) throws Exception {
    Class.forName(StopShort.class.getName(), true, new Asking())
        .getMethod("publish", String.class, int.class, String.class)
        .invoke(null, args[0], Integer.parseInt(args[1]), args[2]);
  }

  public static void publish(String log, int before, String reached) throws IOException {
    left = before;
    mark = Path.of(reached);
    PublishForever.publish(Path.of(log), 1);
  }

  /** What the class that renames calls in the place of {@link Files#move}. */
  public static Path move(Path from, Path to, CopyOption... how) throws IOException {
    if (--left == 0) {
      Files.writeString(mark, from + " to " + to);
      while (true) {
        Thread.onSpinWait();
      }
    }
    return Files.move(from, to, how);
  }

  /** Loads our classes anew, and lets the one that renames ask {@link #move}. */
  private static final class Asking extends ClassLoader {

    Asking() {
      super(StopShort.class.getClassLoader());
    }

    @Override
    protected Class<?> loadClass(String name, boolean resolve) throws ClassNotFoundException {
      synchronized (getClassLoadingLock(name)) {
        if (!name.startsWith("chinelog.")) {
          return super.loadClass(name, resolve);
        }
        Class<?> known = findLoadedClass(name);
        return known == null ? define(name) : known;
      }
    }

    private Class<?> define(String name) throws ClassNotFoundException {
      String path = name.replace('.', '/');
      try (InputStream in = getResourceAsStream(path + ".class")) {
        if (in == null) {
          throw new ClassNotFoundException(name);
        }
        byte[] bytes = path.equals(MOVES) ? asking(in.readAllBytes()) : in.readAllBytes();
        // Themes and templates are looked for beside where a class comes from.
        var home = getParent().loadClass(name).getProtectionDomain();
        return defineClass(name, bytes, 0, bytes.length, home);
      } catch (IOException e) {
        throw new ClassNotFoundException(name, e);
      }
    }

    private static byte[] asking(byte[] shelf) {
      ClassWriter writer = new ClassWriter(0);
      new ClassReader(shelf)
          .accept(
              new ClassVisitor(Opcodes.ASM9, writer) {
                @Override
                public MethodVisitor visitMethod(
                    int access, String name, String type, String signature, String[] thrown) {
                  return new MethodVisitor(
                      Opcodes.ASM9, super.visitMethod(access, name, type, signature, thrown)) {
                    @Override
                    public void visitMethodInsn(
                        int code, String owner, String called, String as, boolean isInterface) {
                      boolean moves = owner.equals("java/nio/file/Files") && called.equals("move");
                      super.visitMethodInsn(code, moves ? OWN : owner, called, as, isInterface);
                    }
                  };
                }
              },
              0);
      return writer.toByteArray();
    }
  }
}
