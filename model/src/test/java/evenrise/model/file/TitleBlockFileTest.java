package evenrise.model.file;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.TitleBlock;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

/** A title block is read like every other file: all of it, or told what is wrong. */
class TitleBlockFileTest {
    private static Reading<TitleBlock> read(String text) {
        return TitleBlockFile.read(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)), "title.yaml");
    }

    @Test
    void allButTheFormatMayBeLeftOut() {
        assertThat(read("format: evenrise-title/1").value()).contains(TitleBlock.NONE);
    }

    @Test
    void keepsRevisionsInTheirOrder() {
        TitleBlock block = read("""
                        format: evenrise-title/1
                        client: Harrow Trust
                        revisions:
                          - {revision: A, date: 2026-10-02, what: first issue}
                          - {revision: B, date: 2026-11-30, what: larger feeder, by: AF}
                        """).value().orElseThrow();

        assertThat(block.client()).contains("Harrow Trust");
        assertThat(block.revisions()).extracting(each -> each.revision()).containsExactly("A", "B");
    }

    @Test
    void refusesAnotherKindOfFile() {
        assertThat(read("format: evenrise-script/1").problems()).isNotEmpty();
        assertThat(read("format: evenrise-script/1").value()).isEmpty();
    }

    @Test
    void refusesAPrefixThatNoMarginHolds() {
        assertThat(read("{format: evenrise-title/1, sheet_prefix: ELECTRICAL}").value())
                .isEmpty();
        assertThat(read("{format: evenrise-title/1, sheet_prefix: ELECTRIC}").value())
                .isPresent();
    }
}
