package evenrise.solver.browser;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.Needs;
import java.awt.Image;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * The page looks as in {@code docs/figures}: kept for eyes, and compared as coarse grey tiles, so that another machine's
 * fonts do not count but a part that moved, vanished or lost its colours does.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
@Needs({"chromium", "chromedriver"})
class PagePicturesTest {
    private static final String REFRESH = "evenrise.refresh";
    private static final Path FIGURES = Path.of("../docs/figures");
    private static final int TILES = 12;
    private static final int MOST_PICTURES = 20;

    /** Of the whole range from black to white, on the mean over all tiles. */
    private static final double TOLERANCE = 0.03;

    private enum Look {
        SEQUENCE_LIGHT("page-sequence-light.png", "light", 1280, "sequence"),
        SEQUENCE_DARK("page-sequence-dark.png", "dark", 1280, "sequence"),
        PANELS_LIGHT("page-panels-light.png", "light", 1280, "panels"),
        PANELS_NARROW("page-panels-narrow.png", "dark", 390, "house");

        private final String file;
        private final String scheme;
        private final int width;
        private final String place;

        Look(String file, String scheme, int width, String place) {
            this.file = file;
            this.scheme = scheme;
            this.width = width;
            this.place = place;
        }
    }

    @TempDir
    private Path folder;

    private Browser browser;

    @BeforeAll
    void openABrowser() {
        browser = new Browser();
    }

    @AfterAll
    void closeIt() {
        browser.close();
    }

    private void open(Look look) {
        browser.window(look.width, 800);
        // Without motion no picture is taken halfway.
        browser.media("screen", look.scheme, "reduce");
        PlanPage page = PlanPage.open(browser, DrawnPages.kept("meridian-hall").document(), folder);
        browser.script(
                "document.getElementById('to-peak').click();"
                        + " document.getElementById(arguments[0]).scrollIntoView()",
                look.place);
        page.frame();
    }

    @ParameterizedTest
    @EnumSource(Look.class)
    void isLikeTheKeptPicture(Look look) throws IOException {
        open(look);
        byte[] picture = settled();
        if (Boolean.getBoolean(REFRESH)) {
            Files.write(FIGURES.resolve(look.file), picture);
        }

        assertThat(difference(picture, Files.readAllBytes(FIGURES.resolve(look.file))))
                .isLessThan(TOLERANCE);
    }

    @ParameterizedTest
    @EnumSource(Look.class)
    void anotherFontIsNotNoticed(Look look) throws IOException {
        open(look);
        byte[] picture = settled();

        browser.script("document.body.style.fontFamily = 'serif'");

        assertThat(browser.picture()).isNotEqualTo(picture);
        assertThat(difference(browser.picture(), picture)).isLessThan(TOLERANCE);
    }

    @Test
    void aMissingDrawingWouldBeNoticed() throws IOException {
        open(Look.SEQUENCE_DARK);
        byte[] whole = settled();

        browser.script("document.getElementById('drawing').remove()");

        assertThat(difference(browser.picture(), whole)).isGreaterThan(TOLERANCE);
    }

    /** Once nothing moves any more: a slow machine is still scrolling and drawing after the page has answered. */
    private byte[] settled() {
        byte[] before = browser.picture();
        for (int i = 0; i < MOST_PICTURES; i++) {
            byte[] now = browser.picture();
            if (Arrays.equals(before, now)) {
                return now;
            }
            before = now;
        }
        return before;
    }

    private static double difference(byte[] one, byte[] other) throws IOException {
        double[] left = tiles(one);
        double[] right = tiles(other);
        double sum = 0;
        for (int i = 0; i < left.length; i++) {
            sum += Math.abs(left[i] - right[i]);
        }
        return sum / left.length;
    }

    private static double[] tiles(byte[] png) throws IOException {
        BufferedImage small = new BufferedImage(TILES, TILES, BufferedImage.TYPE_BYTE_GRAY);
        Image smooth =
                ImageIO.read(new ByteArrayInputStream(png)).getScaledInstance(TILES, TILES, Image.SCALE_AREA_AVERAGING);
        small.getGraphics().drawImage(smooth, 0, 0, null);
        double[] tiles = new double[TILES * TILES];
        for (int i = 0; i < tiles.length; i++) {
            tiles[i] = small.getRaster().getSample(i % TILES, i / TILES, 0) / 255.0;
        }
        return tiles;
    }
}
