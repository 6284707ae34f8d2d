package evenrise.model.estimate;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Catalogue;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class PriceBasisTest {
    private static Project project() {
        return aProject().loads(aLoad("a"), aLoad("b")).build();
    }

    private static Project excluding(List<String> exclusions) {
        return project()
                .withCatalogue(Optional.of(Catalogue.builder()
                        .currency("EUR")
                        .exclusions(Optional.of(exclusions))
                        .build()));
    }

    @Test
    void hasTheUsualExclusionsWhereNobodyStatesAny() {
        PriceBasis basis = PriceBasis.of(project());

        assertThat(basis.isUsual()).isTrue();
        assertThat(basis.exclusionSentence()).contains("taxes", "commissioning", "the usual list");
    }

    @Test
    void hasTheCataloguesExclusionsAndNoOthers() {
        PriceBasis basis = PriceBasis.of(excluding(List.of("scaffolding")));

        assertThat(basis.exclusionSentence()).isEqualTo("Not included in any price: scaffolding.");
        assertThat(PriceBasis.of(excluding(List.of())).exclusionSentence()).contains("nothing is excluded");
    }

    @Test
    void countsWhatWasGuessedByField() {
        Project guessed = project()
                .withLoads(project().loads().stream()
                        .map(load -> load.withGuessed(List.of("running_a")))
                        .toList());

        assertThat(PriceBasis.of(guessed).assumptions())
                .contains("Guessed, and to be confirmed: running current of 2 loads.");
    }

    @Test
    void namesLoadsOfWhichNoInrushIsStated() {
        Project silent = project()
                .withLoads(List.of(
                        project().loads().get(0).withInrushPeakAmps(OptionalDouble.empty()),
                        project().loads().get(1).withInrushPeakAmps(OptionalDouble.of(40))));

        assertThat(PriceBasis.of(silent).assumptions())
                .singleElement()
                .asString()
                .contains("1 switched load states", "'a'");
    }
}
