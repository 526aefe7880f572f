package rosinbook.web;

import com.google.zxing.BinaryBitmap;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import com.google.zxing.qrcode.QRCodeReader;
import java.util.Arrays;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads a code back from the SVG it was drawn as. */
final class SquareCodes {
    private static final int PIXELS_PER_MODULE = 8;
    private static final Pattern SIZE = Pattern.compile("viewBox=\"0 0 (\\d+) \\1\"");
    private static final Pattern MODULE = Pattern.compile("M(\\d+) (\\d+)h1v1h-1z");

    private SquareCodes() {}

    static String read(String svg) throws Exception {
        Matcher size = SIZE.matcher(svg);
        if (!size.find()) {
            throw new AssertionError("no square picture: " + svg);
        }
        int side = Integer.parseInt(size.group(1)) * PIXELS_PER_MODULE;
        int[] pixels = new int[side * side];
        Arrays.fill(pixels, 0xffffff);
        MODULE.matcher(svg).results().forEach(module -> {
            int left = Integer.parseInt(module.group(1)) * PIXELS_PER_MODULE;
            int top = Integer.parseInt(module.group(2)) * PIXELS_PER_MODULE;
            for (int y = top; y < top + PIXELS_PER_MODULE; y++) {
                Arrays.fill(pixels, y * side + left, y * side + left + PIXELS_PER_MODULE, 0);
            }
        });
        return new QRCodeReader()
                .decode(new BinaryBitmap(new HybridBinarizer(new RGBLuminanceSource(side, side, pixels))))
                .getText();
    }
}
