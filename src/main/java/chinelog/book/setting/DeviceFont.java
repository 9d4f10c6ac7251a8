package chinelog.book.setting;

import com.openhtmltopdf.extend.OutputDevice;
import com.openhtmltopdf.pdfboxout.PdfBoxFSFont;
import java.lang.reflect.Field;

/** The face an output device is set to: the device is told it but does not tell. */
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
