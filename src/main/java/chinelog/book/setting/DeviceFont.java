package chinelog.book.setting;

import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import java.lang.reflect.Field;

/**
 * Reads from an output device the font that it is set to. The library has a method to set it and
 * none to ask for it, so that its private field is read.
 */
final class DeviceFont {

  private DeviceFont() {}

  static PdfBoxFSFont of(OutputDevice device) {
    try {
      Field font = device.getClass().getDeclaredField("_font");
      font.setAccessible(true);
      return (PdfBoxFSFont) font.get(device);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException("the output device has changed", e);
    }
  }
}
