package evenrise.model.sizing;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class SizerTest {
    private static final Electrical NEC =
            Electrical.builder().practice(Practice.NEC).build();

    private static Proposal only(Sizes sizes, Part part) {
        assertThat(sizes.of(part)).hasSize(1);
        return sizes.of(part).get(0);
    }

    /** NEC 210.20(A): 125 % of 16 A are 20 A; 12 AWG has 20 A in the 60 °C column of table 310.16, 14 AWG 15 A. */
    @Test
    void showsWhatTheNextSmallerSizeLacks() {
        Project project = aProject()
                .electrical(NEC)
                .loads(aLoad("L1")
                        .runningAmps(16)
                        .breakerAmps(30)
                        .circuit(Circuit.builder()
                                .cable(Cable.builder()
                                        .lengthMetres(10)
                                        .size("6 AWG")
                                        .build())
                                .build())
                        .unswitched())
                .build();

        Sizes sizes = Sizer.of(project, Optional.empty());

        assertThat(only(sizes, Part.BREAKER).proposed().orElseThrow().text()).isEqualTo("20 A");
        assertThat(only(sizes, Part.BREAKER).answers().get(0).why())
                .contains("125 % of it are 20.00 A", "NEC 210.20(A)");
        assertThat(only(sizes, Part.BRANCH_CABLE).proposed().orElseThrow().text())
                .isEqualTo("12 AWG");
        assertThat(only(sizes, Part.BRANCH_CABLE).answers().get(0).why())
                .contains("carries 15.00 A", "needs 20.00 A", "NEC 210.19(A)");
    }

    @Test
    void namesTheCableThatIsNotStated() {
        Project project =
                aProject().electrical(NEC).loads(aLoad("L1").unswitched()).build();

        assertThat(only(Sizer.of(project, Optional.empty()), Part.BRANCH_CABLE).notSized())
                .contains("circuit.cable", "length_m");
    }

    @Test
    void namesThePracticeThatIsNotStated() {
        Project project = aProject().loads(aLoad("L1").unswitched()).build();

        assertThat(Sizer.of(project, Optional.empty()).proposals())
                .singleElement()
                .satisfies(each -> assertThat(each.notSized()).contains("electrical.practice"));
    }
}
