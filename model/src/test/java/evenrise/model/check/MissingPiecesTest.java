package evenrise.model.check;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.ProjectBuilder;
import evenrise.model.project.Project;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** What no plan can keep names the piece that is missing, where it is missing, and for which loads. */
class MissingPiecesTest {
    /** Two panels; in AV-4 so many boards of eight outputs. */
    private static ProjectBuilder inAv4(int boards) {
        ProjectBuilder project =
                aProject().panels(aPanel("AV-3"), aPanel("AV-4")).groups(aGroup("stage"));
        IntStream.rangeClosed(1, 3)
                .forEach(n -> project.boards(aBoard("AV-3-" + n).in("AV-3")));
        IntStream.rangeClosed(1, boards)
                .forEach(n -> project.boards(aBoard("AV-4-" + n).in("AV-4")));
        return project;
    }

    private static void holding(ProjectBuilder project, int loads) {
        IntStream.rangeClosed(1, loads)
                .forEach(n -> project.loads(aLoad("h" + n).runningAmps(1).panels("AV-4")));
    }

    private static void dropping(ProjectBuilder project, int loads) {
        IntStream.rangeClosed(1, loads)
                .forEach(n -> project.loads(
                        aLoad("d" + n).runningAmps(1).group("stage").panels("AV-4")));
    }

    private static Objection onlyOne(ProjectBuilder project) {
        List<Objection> found = found(project);
        assertThat(found).hasSize(1);
        return found.get(0);
    }

    private static List<Objection> found(ProjectBuilder project) {
        Project built = project.build();
        assertThat(ProjectChecks.errors(built)).isEmpty();
        return Feasibility.impossible(built);
    }

    @Test
    void aBoardWhereOutputsAreTooFew() {
        ProjectBuilder project = inAv4(3);
        holding(project, 28);

        Objection objection = onlyOne(project);

        assertThat(objection.value())
                .isEqualTo("a list too short: 28 loads that hold can only be on 'AV-4-1', 'AV-4-2', 'AV-4-3', with 24"
                        + " outputs for them");
        assertThat(objection.cure())
                .isEqualTo("Maybe add 1 board of type 'eight' (8 outputs) that reaches panel 'AV-4', for the 4 outputs"
                        + " missing, or let boards reach more panels.");
    }

    @Test
    void asManyBoardsAsTheOutputsFill() {
        ProjectBuilder project = inAv4(1);
        holding(project, 25);

        assertThat(onlyOne(project).cure())
                .startsWith("Maybe add 3 boards of type 'eight' (8 outputs each) that reach");
    }

    @Test
    void aBoardWhereThoseThatDropAndThoseThatHoldNeedOneMoreThanThereAre() {
        ProjectBuilder project = inAv4(2);
        holding(project, 9);
        dropping(project, 2);

        Objection objection = onlyOne(project);

        // 9 loads fill two boards of eight, the 2 that drop a third; elsewhere there are boards enough
        assertThat(objection.value())
                .isEqualTo(
                        "a list too short: 9 loads that hold and 2 loads that drop on an emergency, which can only be"
                                + " on 'AV-4-1', 'AV-4-2', need at least 3 boards, as no board may mix them");
        assertThat(objection.cure())
                .isEqualTo("Maybe add 1 board of type 'eight' (8 outputs) that reaches panel 'AV-4'.");
    }

    @Test
    void nothingWhereEachClassJustFindsItsBoard() {
        ProjectBuilder project = inAv4(2);
        holding(project, 8);
        dropping(project, 8);

        assertThat(found(project)).isEmpty();
    }

    @Test
    void slots() {
        ProjectBuilder project = aProject().panels(aPanel("P1").slots(3), aPanel("P2"));
        IntStream.rangeClosed(1, 5)
                .forEach(n ->
                        project.loads(aLoad("L" + n).unswitched().runningAmps(1).panels("P1")));

        assertThat(onlyOne(project).cure()).startsWith("2 slots missing. ");
    }

    @Test
    void amperesOfASupply() {
        ProjectBuilder project = aProject().supply(aSupply().ratedAmps(50));
        IntStream.rangeClosed(1, 3)
                .forEach(n -> project.loads(aLoad("L" + n).unswitched().runningAmps(40 + n / 10.0)));

        // the largest alone draws 40.3 A of 0.8 · 50 = 40 A; the mean is 40.2 A
        assertThat(onlyOne(project).cure()).startsWith("It lacks 0.3 A a phase. ");
    }

    @Test
    void panelsForTheCurrentOfAllLoads() {
        ProjectBuilder project =
                aProject().panels(aPanel("P1").ratedAmps(50), aPanel("P2").ratedAmps(50));
        IntStream.rangeClosed(1, 5)
                .forEach(n ->
                        project.loads(aLoad("L" + n).unswitched().threePole().runningAmps(28)));

        // 5 · 3 · 28 = 420 over 2 · 3 · 40 = 240: 180 more, by panels of 120
        assertThat(found(project))
                .extracting(Objection::cure)
                .contains("They lack 180 A. Maybe add 2 panels like 'P1'.");
    }

    @Test
    void panelsForLoadsThatMustBeApart() {
        ProjectBuilder project = aProject().panels(aPanel("P1"), aPanel("P2"));
        project.loads(
                aLoad("a").unswitched().apartFrom("b", "c", "d"),
                aLoad("b").unswitched().apartFrom("c", "d"),
                aLoad("c").unswitched().apartFrom("d"),
                aLoad("d").unswitched());

        assertThat(onlyOne(project).cure()).startsWith("2 panels missing. ");
    }
}
