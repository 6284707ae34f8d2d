package evenrise.solver.desk;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.intake.CellReading;
import evenrise.model.intake.Columns;
import evenrise.model.intake.Mapping;
import evenrise.model.project.Load;
import evenrise.solver.app.ListColumn;
import evenrise.solver.app.ListText;
import evenrise.solver.desk.DeskAnswers.ReadListView;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** A pasted list's questions, answered by the mapping that comes with them. */
class PastedListsTest {
    private static final String LIST = "Qty\tName\tRoom\tWatts\tKlimbim\n"
            + "2\tPower amplifier\tRack room\t800\tbig\n"
            + "1\tUPS 1500 VA\tRack room\t900\tsmall\n"
            + "1\tFollow spot\tBalcony\tTBC\tsmall\n";

    private final PastedLists lists = new PastedLists(Hall.JOBS);

    private ReadListView read(Optional<Mapping> mapping) {
        return lists.read(new DeskRequests.PastedList(LIST, "List", mapping));
    }

    private static Mapping with(Mapping mapping, CellReading... answers) {
        return mapping.withReadings(List.of(answers));
    }

    private static CellReading answer(String of, String name, String written, String reads) {
        return CellReading.builder()
                .of(of)
                .name(Optional.of(name))
                .written(written)
                .reads(reads)
                .build();
    }

    @Test
    void anUnknownColumnIsShownAsNotRead() {
        assertThat(read(Optional.empty()).columns())
                .filteredOn(each -> each.means().isEmpty())
                .extracting(ListColumn::header)
                .containsExactly("Klimbim");
    }

    @Test
    void anUnknownColumnIsReadAsSomebodySays() {
        Mapping told = read(Optional.empty()).mapping();
        Columns columns = Columns.builder()
                .quantity(Optional.of("Qty"))
                .name(Optional.of("Name"))
                .room(Optional.of("Room"))
                .watts(Optional.of("Watts"))
                .zone(Optional.of("Klimbim"))
                .build();

        ReadListView again = read(Optional.of(
                told.with().columns(Optional.of(columns)).ignore(List.of()).build()));

        assertThat(again.columns())
                .filteredOn(each -> each.header().equals("Klimbim"))
                .extracting(ListColumn::means)
                .containsExactly(Optional.of("zone"));
    }

    @Test
    void whatIsAskedAboutIsToldAndLeftUnswitchedUntilItIsAnswered() {
        ReadListView first = read(Optional.empty());
        assertThat(first.texts())
                .filteredOn(each -> each.how().equals("asked") && each.of().equals("switched"))
                .extracting(ListText::name)
                .containsExactly("UPS 1500 VA");
        assertThat(first.unswitched()).anyMatch(each -> each.contains("UPS"));

        Mapping answered = with(first.mapping(), answer("switched", "UPS 1500 VA", "", "yes"));
        ReadListView again = read(Optional.of(answered));

        assertThat(again.texts()).noneMatch(each -> each.of().equals("switched"));
        assertThat(again.unswitched()).noneMatch(each -> each.contains("UPS"));
    }

    @Test
    void aFigureThatIsLeftOpenIsAnsweredAndTakenOver() {
        ReadListView first = read(Optional.empty());
        assertThat(first.texts())
                .anyMatch(each -> each.of().equals("watts") && each.written().equals("TBC"));

        Mapping answered = with(first.mapping(), answer("watts", "Follow spot", "TBC", "1200 W"));
        DeskState taken = lists.taken(new DeskRequests.PastedList(LIST, "List", Optional.of(answered)));

        // 1200 W at 120 V are 10 A at power factor 1 at least.
        assertThat(taken.project().loads())
                .filteredOn(each -> each.name().contains("Follow spot"))
                .extracting(Load::runningAmps)
                .allMatch(amps -> amps >= 10);
    }
}
