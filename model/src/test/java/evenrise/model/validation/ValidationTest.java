package evenrise.model.validation;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.rules.Docs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds ours against values from outside, and the page that shows both against what it would be now. */
class ValidationTest {
    /** Set to write the page anew instead of comparing it. */
    static final String REFRESH = "evenrise.refresh";

    private static final String BEGIN = "<!-- quantities: generated, do not edit -->\n";
    private static final String END = "<!-- end of quantities -->\n";
    private static final Path PAGE = Docs.page("validation.md");

    static List<Check> checks() {
        return Stream.of(
                        QuantityChecks.all(),
                        PeakChecks.all(),
                        DemandChecks.all(),
                        MotorChecks.all(),
                        WiringChecks.all(),
                        SourceChecks.all(),
                        TreeChecks.all(),
                        EventChecks.all())
                .flatMap(List::stream)
                .toList();
    }

    @ParameterizedTest
    @MethodSource("checks")
    void agreesWithTheSource(Check check) {
        assertThat(check.agrees())
                .as(
                        "%s: expected %s within %s, ours %s (%s)",
                        check, check.expected(), check.tolerance(), check.ours(), check.source())
                .isTrue();
    }

    @ParameterizedTest
    @MethodSource("checks")
    void namesASource(Check check) {
        assertThat(check.source()).isNotBlank();
    }

    @Test
    void pageIsWhatTheChecksGive() throws IOException {
        String generated = BEGIN + tables() + END;
        String page = Files.exists(PAGE) ? Files.readString(PAGE) : "# Validation\n\n" + BEGIN + END;
        int begin = page.indexOf(BEGIN);
        int end = page.indexOf(END) + END.length();
        if (Boolean.getBoolean(REFRESH)) {
            Files.writeString(PAGE, page.substring(0, begin) + generated + page.substring(end));
            return;
        }

        assertThat(page.substring(begin, end))
                .as(
                        "docs/validation.md is stale; refresh it with mvn -pl model test -Dtest=ValidationTest"
                                + " -D%s=true",
                        REFRESH)
                .isEqualTo(generated);
    }

    private static String tables() {
        Map<String, List<Check>> sections = checks().stream()
                .collect(Collectors.groupingBy(Check::section, LinkedHashMap::new, Collectors.toList()));
        StringBuilder page = new StringBuilder();
        sections.forEach((section, rows) -> {
            page.append("\n## ").append(section).append("\n\n");
            page.append("| quantity | inputs | expected | ours | difference | tolerance | source |\n");
            page.append("| --- | --- | --- | --- | --- | --- | --- |\n");
            rows.forEach(row -> page.append(row(row)));
        });
        return page.append('\n').toString();
    }

    private static String row(Check row) {
        List<String> cells = List.of(
                row.quantity(),
                row.inputs(),
                row.expected().strip(),
                row.ours().strip(),
                row.difference(),
                row.tolerance(),
                row.source());
        return cells.stream().map(cell -> cell.replace("|", "\\|")).collect(Collectors.joining(" | ", "| ", " |\n"));
    }
}
