package evenrise.model.review;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Set;

/** One check's words on one plan. */
final class Reviews {
    /** Remarks on depth and time together, and on ratings that are no standard ones. */
    private static final Set<String> BY_MORE_THAN_A_FIGURE =
            Set.of("over-criterion", "browns-out", "no-standard-rating");

    private final Remarks findings;

    private Reviews(Project project) {
        findings = new Remarks(project);
    }

    static Reviews of(ElectricalCheck check, Project project, Plan plan) {
        Reviews reviews = new Reviews(project);
        check.review(Layout.of(project, plan), reviews.findings);
        reviews.remarks().forEach(Reviews::hasItsParts);
        reviews.sheetSaysWhatTheWordsSay();
        return reviews;
    }

    /** Whoever reads the figures alone learns of every limit that is passed, and of none that is kept. */
    private void sheetSaysWhatTheWordsSay() {
        for (Quantity figure : findings.quantities()) {
            assertThat(figure.limit().isPresent())
                    .as(figure.name())
                    .isEqualTo(!figure.clause().isEmpty());
            if (figure.isPassed()) {
                assertThat(remarks())
                        .as(figure.place() + ": " + figure.name() + " passes its limit")
                        .anyMatch(each -> each.grade() != Grade.NOT_CHECKED && isAbout(each, figure));
            }
        }
        remarks().stream()
                .filter(each -> each.grade() == Grade.BREAKS || each.grade() == Grade.EXCEEDS_RECOMMENDATION)
                .filter(each -> each.figure().isPresent() && each.limit().isPresent())
                .filter(each -> !BY_MORE_THAN_A_FIGURE.contains(each.kind()))
                .forEach(each -> assertThat(findings.quantities())
                        .as(each.kind() + ": " + each.message())
                        .anyMatch(figure -> figure.isPassed() && figure.place().equals(each.place())));
    }

    private static boolean isAbout(Remark remark, Quantity figure) {
        return remark.place().equals(figure.place())
                || remark.clause().equals(figure.clause())
                || remark.subjects().stream().anyMatch(subject -> subject.id().equals(figure.place()));
    }

    /** Whatever a check says in words it says in parts, too. */
    private static void hasItsParts(Remark remark) {
        assertThat(remark.kind()).as(remark.message()).isNotEmpty();
        assertThat(remark.message().contains("Maybe"))
                .as(remark.message())
                .isEqualTo(!remark.cure().isEmpty());
        assertThat(remark.message())
                .endsWith(remark.cure().isEmpty() ? "" : ". Maybe " + remark.cure() + ".")
                .doesNotContain("..");
    }

    /** A project beside the tests of this package. */
    static Project read(String name) {
        try (InputStream in = Reviews.class.getResourceAsStream(name)) {
            return ProjectFile.read(in, name).value().orElseThrow();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    List<Remark> remarks() {
        return findings.remarks();
    }

    /** The one figure of that name at that place. */
    double figure(String place, String name) {
        return figure(place, name, "");
    }

    /** The same where it is given in several units; any unit where {@code unit} is empty. */
    double figure(String place, String name, String unit) {
        List<Double> found = findings.quantities().stream()
                .filter(each -> each.place().equals(place) && each.name().equals(name))
                .filter(each -> unit.isEmpty() || each.unit().equals(unit))
                .map(Quantity::value)
                .toList();
        if (found.size() != 1) {
            throw new AssertionError(found.size() + " figures '" + name + "' at '" + place + "'");
        }
        return found.get(0);
    }
}
