package evenrise.solver.report;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.event.EventFinding;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class FoldedTest {
    /** 24 amplifiers of one name, numbered, and two other loads. */
    private final Project project =
            aProject().panels(aPanel("P1")).loads(loads()).build();

    private static List<LoadBuilder> loads() {
        List<LoadBuilder> loads = new ArrayList<>();
        IntStream.rangeClosed(1, 24).forEach(i -> loads.add(aLoad("amp-" + i).name("4-channel amplifier " + i)));
        loads.add(aLoad("sub").name("Subwoofer"));
        loads.add(aLoad("P1").name("Desk"));
        return loads;
    }

    private static Remark remark(String load, double amps) {
        return Remark.builder()
                .check("breaker-trip")
                .kind("trips-at-switch-on")
                .grade(Grade.BREAKS)
                .place(load)
                .subjects(List.of(new Subject(SubjectKind.LOAD, load)))
                .figure(amps)
                .limit(80)
                .unit("A")
                .message("load '" + load + "' counts for " + amps + " A, its breaker holds 80 A.")
                .build();
    }

    private List<Remark> ofAllAmplifiers() {
        return IntStream.rangeClosed(1, 24)
                .mapToObj(i -> remark("amp-" + i, 96))
                .toList();
    }

    @Test
    void isOneForLoadsOfOneNameWithTheSameFigures() {
        List<Folded<Remark>> folded = Folded.of(ofAllAmplifiers(), project);

        assertThat(folded)
                .extracting(Folded::text)
                .containsExactly("24 × 4-channel amplifier: load 'amp-1' counts for 96.0 A, its breaker holds 80 A."
                        + " Likewise 'amp-2', 'amp-3', 'amp-4', 'amp-5', 'amp-6' and 18 more.");
        assertThat(folded.get(0).all()).isEqualTo(ofAllAmplifiers());
    }

    @Test
    void isOneForWhatARehearsalHasFoundOfEqualLoadsAtDifferentTimes() {
        List<EventFinding> notes = IntStream.rangeClosed(1, 3)
                .mapToObj(i -> EventFinding.builder()
                        .atSeconds(i)
                        .grade(EventFinding.Grade.NOTE)
                        .rule("amplifiers-last")
                        .kind("behind-live-amplifiers")
                        .subjects(List.of(new Subject(SubjectKind.LOAD, "amp-" + i)))
                        .text("load amp-" + i + " comes on behind live amplifiers")
                        .build())
                .toList();

        assertThat(Folded.of(notes, project))
                .extracting(Folded::text)
                .containsExactly("3 × 4-channel amplifier: load amp-1 comes on behind live amplifiers."
                        + " Likewise 'amp-2', 'amp-3'.");
    }

    @Test
    void staysApartWhereAPartDiffers() {
        Remark first = remark("amp-1", 96);

        assertThat(Folded.of(List.of(first, remark("amp-2", 97)), project)).hasSize(2);
        assertThat(Folded.of(List.of(first, remark("sub", 96)), project)).hasSize(2);
        assertThat(Folded.of(List.of(first, remark("amp-2", 96).withGrade(Grade.NOTE)), project))
                .hasSize(2);
        assertThat(Folded.of(List.of(first, remark("amp-2", 96).withKind("other")), project))
                .hasSize(2);
        assertThat(Folded.of(List.of(first, remark("amp-2", 96).withCheck("other")), project))
                .hasSize(2);
        assertThat(Folded.of(List.of(first, remark("amp-2", 96).withClause("other")), project))
                .hasSize(2);
        assertThat(Folded.of(List.of(first, remark("amp-2", 96)), project)).hasSize(1);
    }

    /** The panel P1 is no load, though a load has its id; plans written before there were kinds tell none. */
    @Test
    void leavesByItselfWhatIsAboutNoLoadOrOfNoKind() {
        Remark panel = remark("P1", 96).withSubjects(List.of(new Subject(SubjectKind.PANEL, "P1")));
        BrokenRule old =
                BrokenRule.builder().rule("slot").message("load 'amp-1' ….").build();

        assertThat(Folded.of(List.of(panel, panel), project)).hasSize(2);
        assertThat(Folded.of(List.of(old, old), project))
                .extracting(Folded::text)
                .containsOnly("load 'amp-1' ….");
    }

    @Test
    void keepsTheOrderOfTheFirstOfEach() {
        List<Folded<Remark>> folded =
                Folded.of(List.of(remark("sub", 96), remark("amp-1", 96), remark("amp-2", 96)), project);

        assertThat(folded).extracting(each -> each.first().place()).containsExactly("sub", "amp-1");
    }

    @Test
    void unfoldsToEachByItselfWithAllNames() {
        Remark notChecked = Remark.notChecked("breaker-trip", "plant", "circuit.curve ('amp-1' and 1 more)")
                .withSubjects(List.of(new Subject(SubjectKind.LOAD, "amp-1"), new Subject(SubjectKind.LOAD, "amp-2")));

        assertThat(Folded.unfolded(ofAllAmplifiers())).hasSize(24);
        assertThat(Folded.unfolded(List.of(notChecked)).get(0).text())
                .isEqualTo("not checked: needs circuit.curve ('amp-1' and 1 more); all: 'amp-1', 'amp-2'");
    }
}
