package voice
import ("os";"strconv")
func init(){ if v:=os.Getenv("FILL"); v!="" { fillLevel,_=strconv.ParseFloat(v,64) }
 if v:=os.Getenv("RN"); v!="" { sphinxSettings[1]=v } }
