package rosinbook.share;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import com.google.zxing.qrcode.QRCodeWriter;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import java.util.Map;
import rosinbook.limit.Limit;
import rosinbook.limit.PastLimit;

/** QR codes (ISO/IEC 18004) as SVG. */
public final class QrCode {
    private static final int QUIET_MODULES = 4;

    private QrCode() {}

    /**
     * Black modules on white with a quiet zone of four modules.
     *
     * @param text up to 1000 characters
     * @throws IllegalArgumentException if the text is empty or too long
     */
    public static String svg(String text) {
        if (text.length() > 1000) {
            throw new PastLimit(Limit.QUERY_TEXT, "text has " + text.length() + " characters; 1000 is the most");
        }
        BitMatrix modules = modules(text);
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < modules.getHeight(); y++) {
            for (int x = 0; x < modules.getWidth(); x++) {
                if (modules.get(x, y)) {
                    path.append('M').append(x).append(' ').append(y).append("h1v1h-1z");
                }
            }
        }
        return "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 " + modules.getWidth() + " "
                + modules.getHeight()
                + "\" shape-rendering=\"crispEdges\" role=\"img\" aria-label=\"The link as a square code\">"
                + "<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/><path d=\"" + path + "\"/></svg>";
    }

    private static BitMatrix modules(String text) {
        try {
            return new QRCodeWriter()
                    .encode(
                            text,
                            BarcodeFormat.QR_CODE,
                            0,
                            0,
                            Map.of(
                                    EncodeHintType.ERROR_CORRECTION,
                                    ErrorCorrectionLevel.M,
                                    EncodeHintType.MARGIN,
                                    QUIET_MODULES));
        } catch (WriterException problem) {
            throw new IllegalArgumentException("text cannot be made into a code", problem);
        }
    }
}
