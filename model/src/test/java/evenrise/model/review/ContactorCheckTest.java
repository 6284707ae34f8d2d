package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.Contactor;
import evenrise.model.project.ContactorCategory;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class ContactorCheckTest {
    /** Two loads of 9 A and 80 A of peak on phase A behind one contactor, and one beside them that runs at 5 A. */
    private static Project plant(Optional<Contactor> contactor) {
        Project project = aProject()
                .panels(aPanel("P").inrushLimitAmps(160))
                .loads(
                        aLoad("L1").runningAmps(9).idleAmps(1).inrushPeakAmps(80),
                        aLoad("L2").runningAmps(9).idleAmps(1).inrushPeakAmps(80),
                        aLoad("L3").unswitched().runningAmps(5))
                .build();
        return project.withLoads(List.of(
                project.loads().get(0).withSwitchedBy(SwitchedBy.CONTACTOR).withContactor(contactor),
                project.loads().get(1).withComesWith(Optional.of("L1")),
                project.loads().get(2)));
    }

    private static Optional<Contactor> rated(ContactorCategory category, double amps) {
        return Optional.of(
                Contactor.builder().category(category).ratedAmps(amps).build());
    }

    private static Plan plan() {
        return aPlan().assignments(
                        anAssignment("L1").at("P", 1).on("B1", 1),
                        anAssignment("L2").at("P", 7),
                        anAssignment("L3").at("P", 13))
                .build();
    }

    private static List<Remark> remarks(Optional<Contactor> contactor, String place) {
        return Reviews.of(new ContactorCheck(), plant(contactor), plan()).remarks().stream()
                .filter(each -> each.place().equals(place))
                .toList();
    }

    /** 18 A on phase A against a rating of 16 A. */
    @Test
    void carriesAllBehindIt() {
        assertThat(remarks(rated(ContactorCategory.AC_3, 16), "L1"))
                .singleElement()
                .matches(each -> each.grade() == Grade.BREAKS
                        && each.figure().getAsDouble() == 18
                        && each.limit().getAsDouble() == 16);
    }

    /** 160 A of peak: AC-1 at 25 A makes 1.5·25·√2 = 53.0 A, AC-3 at 25 A 10·25·√2 = 353.6 A. */
    @Test
    void closesOntoAllBehindItAtOnce() {
        assertThat(remarks(rated(ContactorCategory.AC_1, 25), "L1"))
                .singleElement()
                .matches(each -> each.grade() == Grade.EXCEEDS_RECOMMENDATION
                        && each.figure().getAsDouble() == 160
                        && Math.abs(each.limit().getAsDouble() - 53.033) < 0.001
                        && each.message().contains("AC-1"));
        assertThat(remarks(rated(ContactorCategory.AC_3, 25), "L1")).isEmpty();
    }

    @Test
    void whatItsMakerStatesGoesBefore() {
        Optional<Contactor> stated =
                rated(ContactorCategory.AC_3, 25).map(each -> each.withMakingPeakAmps(OptionalDouble.of(150)));

        assertThat(remarks(stated, "L1"))
                .singleElement()
                .matches(each -> each.grade() == Grade.BREAKS && each.limit().getAsDouble() == 150);
    }

    @Test
    void oneThatIsNotStatedIsNamed() {
        assertThat(remarks(Optional.empty(), "L1"))
                .singleElement()
                .matches(each ->
                        each.grade() == Grade.NOT_CHECKED && each.message().contains("contactor.category"));
    }

    /** √2·(9 + 9 + 5) in use and twice 80 − √2 of excess: 189.7 A on phase A, over the panel's 160 A. */
    @Test
    void closeTogetherAfterASag() {
        Reviews reviews = Reviews.of(new ContactorCheck(), plant(rated(ContactorCategory.AC_3, 25)), plan());
        double peak = Math.sqrt(2) * 23 + 2 * (80 - Math.sqrt(2));

        assertThat(reviews.figure("P", "peak if all contactors close together in full use"))
                .isCloseTo(peak, within(1e-9));
        assertThat(reviews.remarks())
                .anyMatch(each -> each.place().equals("P") && each.limit().getAsDouble() == 160);
    }
}
