package evenrise.solver.app;

import evenrise.solver.engine.SharperBounds;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.ServiceLoader;

/**
 * What all who take part must run, since it decides what a plan comes to: the version, the very build, and whether the
 * part that proves bounds is there.
 */
final class GridSoftware {
    private static final int HASH_DIGITS = 12;

    private GridSoftware() {}

    static String ofThisProgram() {
        boolean proves = ServiceLoader.load(SharperBounds.class).findFirst().isPresent();
        return ProgramVersion.ofThisProgram() + " (build " + build() + ", " + (proves ? "with" : "without")
                + " proofs)";
    }

    /** Of the packed program its SHA-256; of bare classes a word. */
    private static String build() {
        try {
            Path place = Path.of(GridSoftware.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            if (!Files.isRegularFile(place)) {
                return "unpackaged";
            }
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(Files.readAllBytes(place));
            return HexFormat.of().formatHex(hash).substring(0, HASH_DIGITS);
        } catch (IOException | URISyntaxException | NoSuchAlgorithmException e) {
            throw new IllegalStateException("the program cannot read itself", e);
        }
    }
}
