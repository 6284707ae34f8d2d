package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class ManPageTest {
    private final List<String> lines = ManPage.text().lines().toList();

    @Test
    void hasASectionForEachCommand() {
        assertThat(lines)
                .contains(".SH \"EVENRISE PLAN\"", ".SH \"EVENRISE AUDIT\"", ".SH \"EVENRISE COMPLETION\"")
                .contains(".B \\-\\-time TIME");
    }

    /** A line that begins with a dot is an order to the typesetter: only ours may. */
    @Test
    void holdsNoOrdersButItsOwn() {
        assertThat(lines.stream().filter(line -> line.startsWith(".") || line.startsWith("'")))
                .allMatch(line -> line.matches("\\.(TH|SH|PP|TP|B|I|nf|fi)( .*)?"));
        assertThat(lines).noneMatch(line -> line.contains("%n") || line.contains("@|"));
    }

    @Test
    void completesEveryCommand() {
        assertThat(ManPage.completion()).contains("rehearse", "complete -F", "evenrise");
    }
}
