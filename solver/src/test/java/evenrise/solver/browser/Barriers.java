package evenrise.solver.browser;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.List;

/** What keeps somebody from using a page. */
final class Barriers {
    private Barriers() {}

    /** What the checker axe-core finds of WCAG 2.1, levels A and AA. */
    static List<String> of(Browser browser) {
        try (InputStream in = Barriers.class.getResourceAsStream("/axe.min.js")) {
            browser.script(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return ((Collection<?>) browser.scriptThatWaits("const done = arguments[0];"
                        + "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa'],"
                        + " resultTypes: ['violations'] }).then(found => done(found.violations.flatMap(each =>"
                        + " each.nodes.slice(0, 3).map(node => each.id + ': ' + node.target))),"
                        + " error => done(['failed: ' + error]))"))
                .stream().map(String.class::cast).toList();
    }
}
