package evenrise.solver.exchange;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Catalogue;
import evenrise.model.project.PercentageBase;
import evenrise.model.project.Project;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Prices as one table that many bids share. */
class SharedCatalogueTest {
    private static final String HEAD = "Kind,Name,Slots,Poles,Up to A,Price,Price from,Percent,Of\n";

    @TempDir
    private Path folder;

    private SharedCatalogue.Read read(String csv) throws IOException {
        return SharedCatalogue.read(Files.writeString(folder.resolve("prices.csv"), csv));
    }

    private SharedCatalogue shared(String csv) throws IOException {
        SharedCatalogue.Read read = read(csv);
        assertThat(read.problems()).isEmpty();
        return read.catalogue().orElseThrow();
    }

    @Test
    void aTableThatWasWrittenIsReadAsTheSamePrices() throws IOException {
        Catalogue catalogue = ExamplePrices.catalogue();
        PriceTable table = PriceTable.of(catalogue, ExamplePrices.boards());
        Path csv = Files.write(folder.resolve("p.csv"), table.csv());
        Path workbook = Files.write(folder.resolve("p.xlsx"), table.workbook());

        for (Path file : List.of(csv, workbook)) {
            SharedCatalogue.Read read = SharedCatalogue.read(file);
            assertThat(read.problems()).isEmpty();
            assertThat(read.catalogue().orElseThrow().catalogue()).isEqualTo(catalogue);
            assertThat(read.catalogue().orElseThrow().boards().get("b12").price())
                    .isEqualTo(640);
        }
    }

    @Test
    void rowsOfTheTemplateCountForNothing() throws IOException {
        Path template =
                Files.write(folder.resolve("t.xlsx"), PriceTable.template().workbook());

        assertThat(SharedCatalogue.read(template).problems())
                .singleElement()
                .asString()
                .contains("no table of prices");
    }

    @Test
    void pricesAreReadAsPeopleWriteThem() throws IOException {
        Catalogue catalogue = shared("Preise 2026\nKind;Name;Slots;Up to A;Poles;Price;Price from;Percent;Of\n"
                        + "currency;EUR\n"
                        + "panel;p42;42;225;;€ 1.180,50;5: 1100,25; 20: 1.040\n"
                        + "breaker;;;20;1;92,00 EUR\n"
                        + "percentage;VAT;;;;;;19 %;all-above\n")
                .catalogue();

        assertThat(catalogue.panelTypes().get(0).price()).isEqualTo(1180.5);
        assertThat(catalogue.breakers().get(0).price()).isEqualTo(92);
        assertThat(catalogue.percentages().get(0).percent()).isEqualTo(19);
        assertThat(catalogue.percentages().get(0).of()).isEqualTo(PercentageBase.ALL_ABOVE);
    }

    @Test
    void breaksOfPricesStandInOneCell() throws IOException {
        Catalogue catalogue = shared(HEAD + "currency,EUR\nbreaker,,,1,20,92,50: 88; 200: 84.5\n")
                .catalogue();

        assertThat(catalogue.breakers().get(0).priceBreaks())
                .extracting(each -> each.from() + " at " + each.price())
                .containsExactly("50 at 88.0", "200 at 84.5");
    }

    @Test
    void aPriceThatIsNotKnownIsNoPriceAndNotFree() throws IOException {
        SharedCatalogue shared = shared(HEAD + "currency,EUR\nboard,eight,,,,on request\npanel,p,12,,100,\n");
        Project project = shared.on(project());

        assertThat(shared.boards().get("eight").price()).isZero();
        assertThat(project.boardTypes().get(0).price()).isZero();
        assertThat(project.catalogue().orElseThrow().panelTypes().get(0).price())
                .isZero();
    }

    private static Project project() {
        return aProject()
                .boardTypes(aBoardType("eight").price(300), aBoardType("own").price(70))
                .loads(aLoad("L1"))
                .build();
    }

    @Test
    void boardsArePricedByTheirIdAndOthersKeepTheirOwn() throws IOException {
        SharedCatalogue shared = shared(HEAD + "currency,EUR\nboard,eight,,,,250\nboard,other,,,,99\n");
        Project priced = shared.on(project());

        assertThat(priced.boardTypes()).extracting(type -> type.price()).containsExactly(250.0, 70.0);
        assertThat(shared.remarks(project()))
                .anySatisfy(text -> assertThat(text).contains("'own'", "keep the project's own price"))
                .anySatisfy(text -> assertThat(text).contains("'other'", "left out"));
    }

    @Test
    void theFileIsTheSourceOfPricesWhereItStatesNone() throws IOException {
        assertThat(shared(HEAD + "currency,EUR\n").catalogue().source()).isEqualTo(Optional.of("prices.csv"));
        assertThat(shared(HEAD + "currency,EUR\nsource,buyers of May\n")
                        .catalogue()
                        .source())
                .isEqualTo(Optional.of("buyers of May"));
    }

    @Test
    void everyProblemIsToldWithItsPlace() throws IOException {
        assertThat(read(HEAD
                                + "panell,p42,42,,225,1\n"
                                + "panel,p43,x,,225,1\n"
                                + "breaker,,,9,20,5\n"
                                + "percentage,tax,,,,,,0.19,all-above\n"
                                + "work,roof,,,,5\n")
                        .problems())
                .satisfiesExactly(
                        text -> assertThat(text).contains("row 2, column A", "'panell'", "maybe panel"),
                        text -> assertThat(text).contains("row 3, column C", "'x'", "a number"),
                        text -> assertThat(text).contains("row 4", "poles"),
                        text -> assertThat(text).contains("row 5, column H", "19 for 19 %"),
                        text -> assertThat(text).contains("row 6, column B", "'roof'"),
                        text -> assertThat(text).contains("no row of the kind currency"));
    }

    @Test
    void hoursNeedTheirRate() throws IOException {
        assertThat(read("kind,name,hours\ncurrency,EUR\nwork,pole,0.4\n").problems())
                .singleElement()
                .asString()
                .contains("work, pole", "the price of an hour");
    }
}
