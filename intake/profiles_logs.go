package intake

// Logs kept on board and beside her: drafts, tanks, pumps, potentials, the impressed set, water and weather.
func init() {
	profiles = append(profiles,
		profile{
			kind: "draft", needs: []string{"fwd_port", "fwd_starboard", "mid_port", "aft_port", "aft_starboard"}, names: []string{"draft", "drafts", "draught", "draughts", "tiefgang", "freeboard"},
			words: []word{
				{"fwd_port", []string{"draft", "draught", "reading", "freeboard", "tiefgang", "marks"}},
				{"list", []string{"list", "heel", "krangung"}},
				{"density", []string{"density", "sg", "specific gravity", "dichte", "water density"}},
				{"temperature", []string{"water temp", "water temperature", "temp", "temperature"}},
				{"level", []string{"tide", "water level", "gauge", "pegel", "river gauge", "tide gauge", "level"}},
				{"salinity", []string{"salinity", "sal"}},
			},
			ended: map[string]string{
				"forward_port": "fwd_port", "forward_starboard": "fwd_starboard", "mid_port": "mid_port", "mid_starboard": "mid_starboard", "aft_port": "aft_port", "aft_starboard": "aft_starboard",
				"forward": "fwd_port", "mid": "mid_port", "aft": "aft_port",
			},
		},
		profile{
			kind: "sounding", main: "sounding", subject: "tank", needs: []string{"sounding", "ullage", "result", "volume"}, names: []string{"sounding", "soundings", "tanks", "tank", "bilge", "bilges", "peilung", "peilungen"},
			words: []word{
				{"tank", []string{"tank", "tank no", "tank name", "tank no / name", "tank/void", "tank or space", "compartment", "space", "bilge", "void"}},
				{"sounding", []string{"sounding", "sounded", "snd", "dip", "depth", "depth of water", "peilung", "sonde"}},
				{"ullage", []string{"ullage", "outage", "leerraum"}},
				{"reference_height", []string{"ref height", "reference height", "tube ref height", "tube height", "sounding pipe", "tube"}},
				{"product", []string{"product", "contents", "liquid", "content", "inhalt"}},
				{"volume", []string{"volume", "volume from table", "quantity", "contents m3", "vol"}},
				{"smelt", []string{"opened & smelt", "opened and smelt", "smelt"}},
				{"result", []string{"result", "state", "condition"}},
			},
		},
		profile{
			kind: "potential", main: "reading", subject: "station", needs: []string{"reading"}, names: []string{"potential", "potentials", "cp", "mv", "half cell", "cathodic"},
			levels: map[string]string{"surface": "surface", "top": "surface", "middle": "middle", "mid": "middle", "mid depth": "middle", "keel": "keel", "bottom": "keel"},
			words: []word{
				{"reading", []string{"reading", "potential", "mv", "reading mv", "hull potential", "p/s potential", "volts", "v", "potential reading"}},
				{"station", []string{"station", "station no", "point", "pos", "position", "no", "location", "test point", "stn"}},
				{"electrode", []string{"electrode", "reference electrode", "ref electrode", "half cell", "ref cell", "reference cell"}},
				{"electrode_check", []string{"electrode check", "electrode serial", "electrode serial/check", "serial", "calibration"}},
				{"instrument", []string{"meter", "instrument", "voltmeter"}},
				{"impressed", []string{"on/instant off", "on/off", "iccp", "impressed current", "rectifier on/off", "on / off"}},
				{"temperature", []string{"water temp", "water temperature", "temp"}},
				{"salinity", []string{"salinity", "sal"}},
				{"level", []string{"level"}},
				{"neighbours", []string{"moored neighbours bonded", "neighbours", "bonded"}},
			},
		},
		profile{
			kind: "rectifier", main: "current", subject: "set", needs: []string{"current", "voltage"}, names: []string{"rectifier", "iccp", "impressed"},
			words: []word{
				{"voltage", []string{"v", "volts", "dc v", "dc volts", "voltage", "output v", "output volts"}},
				{"current", []string{"a", "amps", "dc a", "dc amps", "current", "amperes", "output a", "output amps", "strom"}},
				{"hours", []string{"hours", "hour meter", "hrs", "run hours"}},
				{"set_point", []string{"set point", "setpoint", "set mv", "setpoint mv", "set"}},
				{"cell", []string{"ref", "reference", "cell", "reference cell", "ref cell", "ref mv", "cell mv", "ref cell mv"}},
				{"set", []string{"unit", "rectifier", "rectifier unit", "unit no"}},
				{"state", []string{"state", "status", "on/off"}},
			},
		},
		profile{
			kind: "pump_count", main: "starts", subject: "pump", needs: []string{"starts", "hours", "hour_meter"}, names: []string{"pump", "pumps"},
			words: []word{
				{"pump", []string{"pump", "pump no", "pumpe"}},
				{"starts", []string{"starts", "count", "counter", "no of starts", "cycles"}},
				{"hours", []string{"hours", "run hours", "hours run", "hrs"}},
				{"hour_meter", []string{"hour meter", "meter", "hours total"}},
			},
		},
		profile{
			kind: "climate", main: "air", needs: []string{"air", "humidity"}, names: []string{"weather", "climate", "wetter", "logger", "humidity"},
			words: []word{
				{"air", []string{"air", "air temp", "temperature", "temp", "dry bulb", "air temperature", "t", "temp out", "temperature c", "lufttemperatur"}},
				{"humidity", []string{"rh", "humidity", "rel humidity", "relative humidity", "luftfeuchte", "rh %", "hum"}},
				{"steel", []string{"steel", "steel temp", "surface temp", "surface temperature", "steel temperature"}},
				{"wind", []string{"wind", "wind speed", "windspeed", "wind avg", "mean wind"}},
				{"rain", []string{"rain", "precipitation", "rainfall", "precip", "niederschlag"}},
				{"space", []string{"space", "where", "compartment", "location"}},
			},
		},
		profile{
			kind: "level", main: "height", subject: "gauge", needs: []string{"height"}, names: []string{"tide", "tides", "gezeiten", "waterlevel", "level", "levels", "gauge"},
			words: []word{
				{"height", []string{"height", "level", "water level", "height above datum", "hohe", "hoehe", "h", "gauge height", "tide", "predicted height", "wl", "stage", "height cd", "pegel"}},
				{"type", []string{"type", "hw/lw", "hw / lw", "high/low", "event", "state", "tide type"}},
				{"gauge", []string{"station", "place", "port", "gauge"}},
				{"forecast", []string{"forecast", "predicted"}},
			},
		},
		profile{
			kind: "leak", needs: []string{"rate", "source", "cause", "state"}, names: []string{"leak", "leaks", "leckage"},
			words: []word{
				{"number", []string{"no", "leak no", "number", "leak", "id"}},
				{"date", []string{"found", "date found"}},
				{"rate", []string{"rate", "flow", "leak rate", "gal/h", "l/h"}},
				{"cause", []string{"cause", "why"}},
				{"state", []string{"state", "status"}},
				{"source", []string{"through", "from", "source", "type"}},
				{"notes", []string{"patch", "what was done", "repair"}},
			},
		},
		profile{
			kind: "coat", needs: []string{"product", "number"}, names: []string{"paint", "paint log", "coating", "coatings", "anstrich"},
			words: []word{
				{"number", []string{"coat", "coat no", "coat number", "coat nr"}},
				{"product", []string{"product", "paint", "material", "coat no & product", "product name"}},
				{"batch", []string{"batch", "batch a/b", "batch no", "charge"}},
				{"grade", []string{"surface prep", "surface prep grade", "prep", "surface preparation", "prep grade", "surface prep standard"}},
				{"profile", []string{"profile", "blast profile", "roughness"}},
				{"salts", []string{"salts", "chlorides"}},
				{"air", []string{"air", "air temp", "air temperature"}},
				{"steel", []string{"steel", "steel temp", "surface temp"}},
				{"humidity", []string{"rh", "humidity", "rel humidity"}},
				{"dew_point", []string{"dew point", "dp", "taupunkt"}},
				{"wet_film", []string{"wft", "wet film"}},
				{"where", []string{"area", "location", "area frames x strakes side"}},
				{"started", []string{"start", "started"}},
				{"stopped", []string{"stop", "stopped", "finish"}},
			},
		},
		profile{
			kind: "film", main: "readings", needs: []string{"readings"}, names: []string{"dft", "film"},
			words: []word{
				{"readings", []string{"dft", "readings", "dft readings", "dry film", "dft um", "dft mils"}},
				{"nominal", []string{"required", "nominal", "specified", "spec"}},
				{"where", []string{"area", "location"}},
			},
		},
		profile{
			kind: "water", needs: []string{"salinity", "conductivity", "resistivity"}, names: []string{"salinity", "water sample", "ctd"},
			words: []word{
				{"salinity", []string{"salinity", "sal", "psu"}}, {"conductivity", []string{"conductivity", "cond"}}, {"temperature", []string{"temp", "temperature", "water temp"}}, {"depth", []string{"depth", "sample depth"}},
			},
		},
	)
}
