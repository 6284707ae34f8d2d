/**
 * Records of the readings file: what was read on site with what, as the commissioning page saves it.
 *
 * <p>May touch model.contract, model.project.
 */
package evenrise.model.readings;
