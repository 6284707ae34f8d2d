package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** A stock of labels lies on its sheet, or is refused. */
class LabelStockTest {
    @Test
    void everyNamedGridLiesOnItsSheetAndIsCalledByItsSizes() {
        assertThat(LabelStock.NAMED).isNotEmpty().allSatisfy((name, stock) -> {
            int last = stock.onASheet() - 1;
            assertThat(stock.left(last) + stock.labelWidth()).isLessThanOrEqualTo(stock.sheetWidth());
            assertThat(stock.top(last) + stock.labelHeight()).isLessThanOrEqualTo(stock.sheetHeight());
            assertThat(name)
                    .endsWith(
                            String.format(java.util.Locale.ROOT, "-%.1fx%.1f", stock.labelWidth(), stock.labelHeight())
                                    .replace(".0", ""));
            assertThat(LabelStock.of(name)).contains(stock);
        });
    }

    @Test
    void sizesInFullAreReadInTheirOrder() {
        assertThat(LabelStock.of("210x297:63.5x38.1:3x7:7.25x15.15:2.5x1"))
                .contains(new LabelStock(210, 297, 63.5, 38.1, 3, 7, 7.25, 15.15, 2.5, 1));
    }

    @Test
    void labelsAreCountedRowByRow() {
        LabelStock stock =
                LabelStock.of("210x297:63.5x38.1:3x7:7.25x15.15:2.5x1").orElseThrow();

        assertThat(stock.left(4)).isEqualTo(7.25 + 66);
        assertThat(stock.top(4)).isEqualTo(15.15 + 39.1);
    }

    @Test
    void labelsThatJustFitAreTaken() {
        assertThat(LabelStock.of("100x100:50x50:2x2:0x0:0x0")).isPresent();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "a4",
                "100x100:50x50:2x2:0x0",
                "100x100:50x50:2x2:1x0:0x0",
                "100x100:50x50:2x2:0x0:0x1",
                "100x100:50x50:2.5x2:0x0:0x0",
                "100x100:50x50:0x2:0x0:0x0",
                "100x100:14x50:2x2:0x0:0x0",
                "100x100:50x7:2x2:0x0:0x0",
                "2000x100:50x50:2x2:0x0:0x0",
                "100x100:-50x50:2x2:0x0:0x0",
                "NaNx100:50x50:2x2:0x0:0x0",
                "1000x1000:15x8:60x60:0x0:0x0"
            })
    void whatFitsOnNoSheetIsRefused(String text) {
        assertThat(LabelStock.of(text)).isEmpty();
    }
}
