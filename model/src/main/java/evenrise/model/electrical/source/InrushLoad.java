package evenrise.model.electrical.source;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Inrushes of one kind in one panel, which lag by one angle, together.
 *
 * @param kind place of the kind among those of an instant
 * @param lagRadians of their loads in service
 * @param siemens that draw their currents in phase with nominal voltage
 * @param whole these currents
 */
record InrushLoad(String panel, int kind, double lagRadians, LineMatrix siemens, LineValues whole) {
    private record Place(String panel, int kind, double lagRadians) {}

    static List<InrushLoad> of(Plant plant, List<Inrush> inrushes, Map<Object, Integer> kinds) {
        Map<Place, InrushLoad> all = new LinkedHashMap<>();
        for (Inrush each : inrushes) {
            Drawn drawn = each.drawn();
            LineValues nominal = plant.nominal(drawn.panel());
            Place place = new Place(drawn.panel(), kinds.get(each.kind()), each.lagRadians());
            InrushLoad own = new InrushLoad(
                    place.panel(), place.kind(), place.lagRadians(), drawn.siemens(nominal), drawn.lines(nominal));
            all.merge(place, own, InrushLoad::with);
        }
        return new ArrayList<>(all.values());
    }

    private InrushLoad with(InrushLoad more) {
        return new InrushLoad(panel, kind, lagRadians, siemens.plus(more.siemens), whole.plus(more.whole));
    }
}
