package evenrise.solver.rendering;

import io.nayuki.qrcodegen.QrCode;
import java.util.Locale;
import java.util.Optional;

/** A link as a code to scan (ISO/IEC 18004), as large as a label lets it be. */
public final class LinkCode {
    /** Empty modules around it, as the standard asks (from memory). */
    private static final int QUIET = 4;

    /** What a telephone reads in its hand (common practice, no source). */
    private static final double LEAST_MODULE_MILLIMETRES = 0.33;

    /** Far below what a code holds, and far above what a label has room for. */
    private static final int LONGEST = 700;

    private static final double MOST_MODULE_MILLIMETRES = 0.6;

    private final QrCode code;
    private final double side;

    private LinkCode(QrCode code, double side) {
        this.code = code;
        this.side = side;
    }

    /** @param room in millimetres; empty where a code in it would be too fine to be read */
    static Optional<LinkCode> of(String link, double room) {
        if (link.length() > LONGEST) {
            return Optional.empty();
        }
        QrCode code = QrCode.encodeText(link, QrCode.Ecc.LOW);
        int modules = code.size + 2 * QUIET;
        return room / modules < LEAST_MODULE_MILLIMETRES
                ? Optional.empty()
                : Optional.of(new LinkCode(code, Math.min(room, MOST_MODULE_MILLIMETRES * modules)));
    }

    /** With its empty border, in millimetres. */
    public double side() {
        return side;
    }

    /** Modules along a side, with the border. */
    public int modules() {
        return code.size + 2 * QUIET;
    }

    /** Its dark modules, as the outline of an SVG whose unit is a module. */
    public String path() {
        StringBuilder path = new StringBuilder();
        for (int y = 0; y < code.size; y++) {
            for (int x = 0; x < code.size; x++) {
                int begin = x;
                while (x < code.size && code.getModule(x, y)) {
                    x++;
                }
                if (x > begin) {
                    path.append(String.format(
                            Locale.ROOT, "M%d %dh%dv1h-%dz", begin + QUIET, y + QUIET, x - begin, x - begin));
                }
            }
        }
        return path.toString();
    }
}
