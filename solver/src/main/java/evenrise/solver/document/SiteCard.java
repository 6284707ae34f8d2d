package evenrise.solver.document;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What is read at one place on site: a pole of a load, a whole panel, node or supply, or a residual-current device.
 *
 * @param kind pole, place or device, as the lists of the readings file are called
 * @param under the panel, node or supply where whoever reads it stands
 * @param head for people
 * @param note what else helps to find it
 * @param load id; empty where it is none
 * @param phase letter of the pole; empty where it is none
 * @param place id, or as the device's sheet has it; empty for a pole
 * @param protects of a device
 * @param ratedMa of a device
 * @param hasRotation whether the order of phases is asked for
 */
public record SiteCard(
        String kind,
        String under,
        String head,
        String note,
        String load,
        String phase,
        String place,
        String protects,
        OptionalDouble ratedMa,
        boolean hasRotation,
        List<SiteAsk> asks) {
    public SiteCard {
        asks = List.copyOf(asks);
    }
}
