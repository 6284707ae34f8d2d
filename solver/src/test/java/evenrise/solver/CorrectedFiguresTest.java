package evenrise.solver;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** docs/validation.md names the test that holds each figure which was once wrong; a test that is not there holds nothing. */
class CorrectedFiguresTest {
    private static final Path PAGE = Path.of("../docs/validation.md");
    private static final String SECTION = "## Figures that were wrong or missing";
    private static final Pattern NAMED = Pattern.compile("`([A-Za-z]+Test)(?:#([A-Za-z0-9]+))?` \\|$");

    @Test
    void everyLineNamesATestThatIsThere() throws IOException {
        String page = Files.readString(PAGE);
        List<String> lines = page.substring(page.indexOf(SECTION))
                .lines()
                .skip(1)
                .takeWhile(line -> !line.startsWith("## "))
                .filter(line -> line.startsWith("| ") && !line.startsWith("| ---") && !line.startsWith("| what was"))
                .toList();
        List<String> missing = new ArrayList<>();
        for (String line : lines) {
            Matcher named = NAMED.matcher(line);
            if (!named.find() || !isThere(named.group(1), Optional.ofNullable(named.group(2)))) {
                missing.add(line);
            }
        }

        assertThat(lines).hasSizeGreaterThan(50);
        assertThat(missing).isEmpty();
    }

    private static boolean isThere(String type, Optional<String> method) throws IOException {
        for (Path sources : List.of(Path.of("../model/src/test/java"), Path.of("src/test/java"))) {
            try (Stream<Path> files = Files.walk(sources)) {
                for (Path file : files.filter(
                                each -> each.getFileName().toString().equals(type + ".java"))
                        .toList()) {
                    if (method.isEmpty() || Files.readString(file).contains("void " + method.get() + "(")) {
                        return true;
                    }
                }
            }
        }
        return false;
    }
}
